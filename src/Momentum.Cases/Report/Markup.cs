using System.Globalization;
using System.Runtime.CompilerServices;
using System.Security;
using System.Text;

namespace Momentum.Cases.Report;

/// <summary>
/// HTML that is safe to put on the page. It is written as an interpolated string whose holes are escaped unless they are
/// markup themselves, so text from a case file cannot become markup. Bare floating-point numbers do not compile: a number
/// goes on the page as a <see cref="Model.Figure"/>, with its unit.
/// </summary>
internal readonly struct Markup
{
    private readonly string? _html;

    private Markup(string html) => _html = html;

    /// <summary>Nothing.</summary>
    public static Markup None => default;

    /// <summary>Markup from an interpolated string.</summary>
    public static Markup Of(ref Handler html) => new(html.ToString());

    /// <summary>Markup that this program made or ships itself.</summary>
    public static Markup Trusted(string html) => new(html);

    /// <summary>The pieces one after the other, a line each.</summary>
    public static Markup Join(IEnumerable<Markup> pieces) => new(string.Join('\n', pieces));

    /// <summary>The pieces for each item, a line each.</summary>
    public static Markup Each<T>(IEnumerable<T> items, Func<T, Markup> piece) => Join(items.Select(piece));

    /// <summary>The HTML text.</summary>
    public override string ToString() => _html ?? "";

    /// <summary>Builds markup from the parts of an interpolated string.</summary>
    [InterpolatedStringHandler]
    internal readonly ref struct Handler
    {
        private readonly StringBuilder _text;

        /// <summary>Called by the compiler.</summary>
        public Handler(int literalLength, int formattedCount) => _text = new StringBuilder(literalLength + (formattedCount * 16));

        /// <summary>Called by the compiler.</summary>
        public void AppendLiteral(string html) => _text.Append(html);

        /// <summary>Escapes text.</summary>
        public void AppendFormatted(string text) => _text.Append(SecurityElement.Escape(Printable.Text(text)));

        /// <summary>Writes a count or an index.</summary>
        public void AppendFormatted(int count) => _text.Append(count.ToString(CultureInfo.InvariantCulture));

        /// <summary>Inserts markup as it is.</summary>
        public void AppendFormatted(Markup markup) => _text.Append(markup._html);

        /// <inheritdoc/>
        public override string ToString() => _text.ToString();
    }
}
