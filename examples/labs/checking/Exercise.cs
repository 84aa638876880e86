using System.Globalization;
using PrinterMath.Measurement;

namespace LabChecking;

/// <summary>One exercise: its sheet, its hand-out, the library's answers and the student's, and the program that compares them.</summary>
/// <typeparam name="TSheet">What is read on one machine.</typeparam>
public sealed class Exercise<TSheet>
    where TSheet : class
{
    private const double CodeTolerance = 1e-6;

    /// <summary>What it is about, in two words.</summary>
    public required string Title { get; init; }

    /// <summary>What must not be forgotten at a real machine, in one line.</summary>
    public required string Caution { get; init; }

    /// <summary>The invented sheet of a student.</summary>
    public required Func<int, TSheet> Invented { get; init; }

    /// <summary>A sheet with one reading of the student's own; throws <see cref="ArgumentException"/> for a name that it does not have.</summary>
    public required Func<TSheet, string, double, TSheet> With { get; init; }

    /// <summary>The sheet as printed.</summary>
    public required Func<TSheet, string[]> Lines { get; init; }

    /// <summary>The questions with the library's answers.</summary>
    public required Func<TSheet, Question[]> Questions { get; init; }

    /// <summary>Name of the argument of each answer by hand, and the answer written into the file.</summary>
    public required (string Argument, double? Answer)[] ByHand { get; init; }

    /// <summary>What the student's formulas say.</summary>
    public required Func<TSheet, double?[]> InCode { get; init; }

    /// <summary>Sentences, one of them wrong.</summary>
    public required string[] HandOut { get; init; }

    /// <summary>Number of the wrong one, from 1.</summary>
    public required int WrongSentence { get; init; }

    /// <summary>The number of it that is written into the file.</summary>
    public required double? WrongByHand { get; init; }

    /// <summary>What to think of for the wrong sentence.</summary>
    public required string WrongHint { get; init; }

    /// <summary>Runs the program.</summary>
    /// <returns>Exit code: 0 nothing wrong so far, 1 a wrong answer, 2 arguments that cannot be used.</returns>
    public int Run(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            Dictionary<string, double> hand = [];
            TSheet? own = null;
            int student = Student(args);
            bool key = false;
            for (int i = 0; i < args.Length; i += 2)
            {
                string name = args[i], value = i + 1 < args.Length ? args[i + 1] : throw new ArgumentException($"{args[i]} lacks its value.");
                switch (name)
                {
                    case "--student": break;
                    case "--answers": key = value == "key" ? true : throw new ArgumentException("The only answers known are those of the 'key'."); break;
                    case "--set":
                        string[] pair = value.Split('=');
                        own = With(own ?? Invented(student), pair[0], Number(pair.ElementAtOrDefault(1) ?? string.Empty));
                        break;
                    case "--wrong": hand[name] = Number(value); break;
                    default:
                        hand[ByHand.Any(known => known.Argument == name) ? name : throw new ArgumentException($"'{name}' is not known; README.md lists the arguments.")] = Number(value);
                        break;
                }
            }

            return key ? Key(Questions(own ?? Invented(student))) : Check(student, own, hand);
        }
        catch (Exception mistake) when (mistake is ArgumentException or IndeterminateException)
        {
            Console.Error.WriteLine(mistake.Message);
            return 2;
        }
    }

    private int Check(int student, TSheet? own, Dictionary<string, double> hand)
    {
        TSheet sheet = own ?? Invented(student), nextSheet = Invented(student + 1);
        Question[] questions = Questions(sheet), next = Questions(nextSheet);
        Console.WriteLine($"{Title}, student {student}: {(own is null ? "an invented machine with invented readings" : "your own readings, the rest invented")}");
        Console.WriteLine(Caution);
        Console.WriteLine("\nYour sheet");
        Array.ForEach(Lines(sheet), line => Console.WriteLine($"  {line}"));
        Console.WriteLine("\nHand-out; one of its sentences is wrong");
        for (int i = 0; i < HandOut.Length; i++)
        {
            Console.WriteLine($"  {i + 1}. {HandOut[i]}");
        }

        Console.WriteLine("\nAnswers");
        bool wrong = false;
        double?[] code = InCode(sheet), codeNext = InCode(nextSheet);
        for (int i = 0; i < questions.Length; i++)
        {
            Question question = questions[i];
            double? written = hand.TryGetValue(ByHand[i].Argument, out double argument) ? argument : ByHand[i].Answer;
            string? handHint = written is { } h ? question.Hint(h, question.HandTolerance) : null;
            string? codeHint = code[i] is { } c ? question.Hint(c, CodeTolerance) : null;
            if (code[i] is not null && codeHint is null && (codeNext[i] is not { } other || next[i].Hint(other, CodeTolerance) is not null))
            {
                // Two sheets may agree in a number that has few values, but in no other.
                codeHint = "right for your sheet, but not for the next student's: use the arguments, not your numbers";
            }

            Console.WriteLine($"  {i + 1}. {question.Name} ({(question.Unit.Length > 0 ? question.Unit : "ratio")})");
            Console.WriteLine($"     by hand: {Line(written, handHint, $"not yet; {ByHand[i].Argument}, or class ByHand")}");
            Console.WriteLine($"     in code: {Line(code[i], codeHint, "not yet; class InCode")}");
            if (code[i] is not null && codeHint is null)
            {
                Console.WriteLine($"     beyond:  {question.Beyond}");
            }

            wrong |= handHint is not null || codeHint is not null;
        }

        double? sentence = hand.TryGetValue("--wrong", out double chosen) ? chosen : WrongByHand;
        string? sentenceHint = sentence is { } w && w != WrongSentence ? WrongHint : null;
        Console.WriteLine($"  {questions.Length + 1}. the wrong sentence\n     by hand: {Line(sentence, sentenceHint, "not yet; --wrong, or class ByHand")}");
        return wrong || sentenceHint is not null ? 1 : 0;
    }

    private static string Line(double? answer, string? hint, string notYet) => answer is null ? notYet : hint is null ? "right" : $"{answer:G5}: {hint}";

    /// <summary>The teacher's key, and the checker checked: every slip must get its own hint, the right answer none, for a whole class.</summary>
    private int Key(Question[] questions)
    {
        for (int i = 0; i < questions.Length; i++)
        {
            Question question = questions[i];
            Console.WriteLine($"Step {i + 1}, {question.Name}: {question.Show(question.Right)}");
            Array.ForEach(question.Slips, slip => Console.WriteLine($"  {slip.Name}: {question.Show(slip.Value)}; {question.Hint(slip.Value, question.HandTolerance) ?? "PASSES AS RIGHT"}"));
        }

        Console.WriteLine($"Step {questions.Length + 1}, the wrong sentence: {WrongSentence}");
        string[] unclear = [.. Enumerable.Range(1, 99).SelectMany(other => Questions(Invented(other)).SelectMany(question => Unclear(other, question)))];
        Array.ForEach(unclear, Console.WriteLine);
        Console.WriteLine($"Checker, students 1 to 99: {unclear.Length} slips without a hint of their own");
        return unclear.Length == 0 && questions.All(question => question.Hint(question.Right, CodeTolerance) is null) ? 0 : 1;
    }

    private static IEnumerable<string> Unclear(int student, Question question) => question.Slips
        .Where(slip => question.Hint(slip.Value, question.HandTolerance) != slip.Hint)
        .Select(slip => $"student {student}, {question.Name}, {slip.Name}: {question.Show(slip.Value)} beside {question.Show(question.Right)}");

    private static int Student(string[] args)
    {
        int at = Array.IndexOf(args, "--student");
        double number = at < 0 || at + 1 >= args.Length ? throw new ArgumentException("Say which sheet: --student N, N from 1 to 9999.") : Number(args[at + 1]);
        return number is >= 1 and <= 9999 && number == Math.Floor(number) ? (int)number : throw new ArgumentException("--student is a whole number from 1 to 9999.");
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new ArgumentException($"'{text}' is not a number; write it like 25.4, with a point.");
}
