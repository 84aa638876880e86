using System.Diagnostics;

namespace PrinterMath.SurfaceMesh;

/// <summary>A height model among which to choose, by name.</summary>
/// <example><code>SurfaceCandidate smooth = SurfaceCandidate.Of("bicubic", BicubicModel.Through(grid));</code></example>
[DebuggerDisplay("{Name,nq}")]
public sealed class SurfaceCandidate
{
    private SurfaceCandidate(string name, IHeightModel model) => (Name, Model) = (name, model);

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>The model.</summary>
    public IHeightModel Model { get; }

    /// <summary>A candidate.</summary>
    /// <param name="name">A name, not empty.</param>
    /// <param name="model">The model.</param>
    /// <returns>The candidate.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public static SurfaceCandidate Of(string name, IHeightModel model)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return new SurfaceCandidate(name, Guard.NotNull(model));
    }

    /// <summary>The name.</summary>
    /// <returns>The name.</returns>
    public override string ToString() => Name;
}
