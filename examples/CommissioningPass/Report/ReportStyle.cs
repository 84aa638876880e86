namespace CommissioningPass.Report;

/// <summary>How the report looks: black on white, one column on a phone, fit for paper. Written without characters that XML escapes.</summary>
internal static class ReportStyle
{
    internal const string Css =
        """

        * { box-sizing: border-box; }
        body { margin: 0; background: #fff; color: #1a1a1a; font: 16px/1.5 system-ui, sans-serif; overflow-wrap: anywhere; }
        main { max-width: 1000px; margin: 0 auto; padding: 12px; }
        h1 { font-size: 1.7em; margin: 0.3em 0; line-height: 1.2; }
        h2 { font-size: 1.35em; margin: 1.6em 0 0.4em; padding-top: 0.5em; border-top: 2px solid #1a1a1a; line-height: 1.2; }
        h3 { font-size: 1.05em; margin: 1em 0 0.2em; }
        p { margin: 0.4em 0; max-width: 46em; }
        ul { margin: 0.3em 0; padding-left: 1.3em; max-width: 46em; }
        .subject { font-weight: bold; }
        .next { border: 2px solid #1a1a1a; padding: 0 14px 10px; margin-top: 1em; }
        .next h2 { border: 0; margin-top: 0.4em; padding: 0; }
        .caution { list-style: none; margin-left: -1.3em; padding: 0 0 0 0.7em; border-left: 5px solid #e69f00; }
        table { border-collapse: collapse; width: 100%; margin: 0.6em 0; }
        th, td { text-align: left; vertical-align: top; padding: 4px 10px 4px 0; border-bottom: 1px solid #bfbfbf; font-weight: normal; }
        thead th { font-weight: bold; border-bottom: 2px solid #1a1a1a; }
        tbody th { min-width: 10em; }
        td[data-label="Value"], td[data-label="Limit"] { white-space: nowrap; }
        .verdict { display: inline-block; white-space: nowrap; }
        .sign { display: inline-block; width: 1.5em; text-align: center; font-weight: bold; color: #000; border: 1px solid #1a1a1a; border-radius: 3px; line-height: 1.35; }
        .within .sign { background: #7fd6bd; }
        .outside .sign { background: #f0a070; }
        .undecided .sign { background: #f6d27a; }
        .figures { display: grid; grid-template-columns: minmax(0, 1fr); gap: 12px 28px; margin: 0.8em 0; }
        figure { margin: 0; max-width: 480px; break-inside: avoid; }
        svg { display: block; width: 100%; height: auto; }
        figcaption { font-size: 0.9em; line-height: 1.4; }
        footer { margin-top: 2em; border-top: 1px solid #bfbfbf; font-size: 0.9em; }
        @media (min-width: 800px), print { .figures { grid-template-columns: repeat(2, minmax(0, 1fr)); } }
        @media screen and (max-width: 640px) {
          thead { display: none; }
          table, tbody, tr, th, td { display: block; width: 100%; }
          tr { border-bottom: 1px solid #8c8c8c; padding: 5px 0; }
          th, td { border: 0; padding: 1px 0; }
          tbody th { font-weight: bold; }
          td:empty { display: none; }
          td { display: flex; gap: 10px; }
          td::before { content: attr(data-label); flex: 0 0 4.5em; color: #595959; }
        }
        @media print { body { font-size: 10.5pt; } main { max-width: none; padding: 0; } tr, li { break-inside: avoid; } h2, h3 { break-after: avoid; } }

        """;
}
