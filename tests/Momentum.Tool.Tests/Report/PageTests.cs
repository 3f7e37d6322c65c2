using System.Text;
using System.Text.RegularExpressions;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Model;
using PuppeteerSharp;
using PuppeteerSharp.Media;
using Verdict = Momentum.Cases.Answers.Verdict;

namespace Momentum.Tool.Tests.Report;

/// <summary>What a reader of the page may rely on, whatever the screen.</summary>
[Collection(BrowserTests.Name)]
public sealed partial class PageTests(Chromium chromium)
{
    private static readonly string _html = HtmlReport.Render(SampleReport.Full);

    [Fact]
    public async Task Page_opens_without_complaint_and_asks_the_network_for_nothing()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.ClickAsync("#play");
        await page.Page.ClickAsync("nav a[href='#inputs']");

        Assert.Empty(page.Complaints);
        Assert.Empty(page.Requests);
    }

    [Fact]
    public async Task Policy_of_the_page_refuses_a_request_that_some_script_would_make()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        string outcome = await page.Ask<string>("fetch('http://127.0.0.1:9/').then(() => 'went out', e => String(e))");

        Assert.Contains("TypeError", outcome, StringComparison.Ordinal);
        Assert.Contains(page.Complaints, c => c.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(390, "light")]
    [InlineData(390, "dark")]
    [InlineData(768, "light")]
    [InlineData(1400, "light")]
    [InlineData(1400, "dark")]
    public async Task Nothing_sticks_out_of_the_window(int width, string scheme)
    {
        await using OpenPage page = await chromium.OpenAsync(_html, width, scheme);
        string[] outside = await page.Ask<string[]>("""
            [...document.querySelectorAll('body *:not(.skip)')]
              .filter(e => !e.parentElement.closest('svg'))
              .filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && (r.left < -0.5 || r.right > document.documentElement.clientWidth + 0.5); })
              .map(e => e.tagName + ' ' + e.className + ' ' + e.textContent.slice(0, 40))
            """);
        string[] cutOff = await page.Ask<string[]>("""
            [...document.querySelectorAll('svg text')]
              .filter(t => { const r = t.getBoundingClientRect(), s = t.ownerSVGElement.getBoundingClientRect();
                return r.left < s.left - 0.5 || r.right > s.right + 0.5 || r.top < s.top - 0.5 || r.bottom > s.bottom + 0.5; })
              .map(t => t.textContent)
            """);

        Assert.Empty(outside);
        Assert.Empty(cutOff);
        Assert.True(await page.Ask<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task Text_stands_out_from_its_ground_by_four_and_a_half_to_one(string scheme)
    {
        // Formula and limit: Web Content Accessibility Guidelines 2.2, relative luminance and success criterion 1.4.3.
        await using OpenPage page = await chromium.OpenAsync(_html, scheme: scheme);
        string[] faint = await page.Page.EvaluateFunctionAsync<string[]>(Contrast, "text", 4.5);

        Assert.Empty(faint);
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task Curves_stand_out_from_their_ground_by_three_to_one(string scheme)
    {
        // Limit: Web Content Accessibility Guidelines 2.2, success criterion 1.4.11.
        DespinReport six = SampleReport.Full with
        {
            Charts =
            [
                SampleReport.Full.Charts[0] with
                {
                    Series = [.. Enumerable.Range(1, 6).Select(i => new ChartSeries($"curve {i}", [0, 1], [0, i]))],
                    Events = [],
                    FollowsAnimation = false,
                },
            ],
        };
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(six), scheme: scheme);
        string[] faint = await page.Page.EvaluateFunctionAsync<string[]>(Contrast, "curve", 3);

        Assert.Equal(6, await page.Ask<int>("document.querySelectorAll('.legend line').length"));
        Assert.Empty(faint);
    }

    [Fact]
    public async Task Every_picture_and_control_has_words()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        string[] silent = await page.Ask<string[]>("""
            [...document.querySelectorAll('svg')].filter(s => s.getAttribute('aria-hidden') !== 'true' && !(s.getAttribute('role') === 'img' && (s.getAttribute('aria-label') ?? '').length > 30))
              .concat([...document.querySelectorAll('img:not([alt])')])
              .concat([...document.querySelectorAll('button, input, select')].filter(c => !(c.textContent.trim() && c.tagName === 'BUTTON') && !c.getAttribute('aria-label') && !c.closest('label')))
              .map(e => e.outerHTML.slice(0, 80))
            """);

        Assert.Empty(silent);
        Assert.Equal(1, await page.Ask<int>("document.querySelectorAll('h1').length"));
        Assert.Equal("en", await page.Ask<string>("document.documentElement.lang"));
    }

    [Fact]
    public async Task Ids_are_unique_and_every_reference_to_one_finds_it()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);

        Assert.Empty(await page.Ask<string[]>("[...document.querySelectorAll('[id]')].map(e => e.id).filter((id, i, all) => all.indexOf(id) !== i)"));
        Assert.Empty(await page.Ask<string[]>("""
            [...document.querySelectorAll('a[href^="#"]')].map(a => a.getAttribute('href').slice(1))
              .concat([...document.querySelectorAll('[clip-path]')].map(e => e.getAttribute('clip-path').match(/#(.*)\)/)[1]))
              .concat([...document.querySelectorAll('[aria-labelledby], [aria-describedby]')].flatMap(e => [e.getAttribute('aria-labelledby'), e.getAttribute('aria-describedby')]).filter(x => x))
              .filter(id => !document.getElementById(id))
            """));
    }

    [Fact]
    public async Task Paper_is_light_and_shows_the_multiple_exposure_in_place_of_the_animation()
    {
        await using OpenPage page = await chromium.OpenAsync(_html, scheme: "dark");
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);

        Assert.Equal("rgb(255, 255, 255)", await page.Ask<string>("getComputedStyle(document.body).backgroundColor"));
        Assert.Equal("none", await page.Ask<string>("getComputedStyle(document.getElementById('unwinding')).display"));
        Assert.True(await page.Ask<bool>("document.querySelector('.paths svg').getBoundingClientRect().height > 100"));
    }

    [Fact]
    public async Task Paper_takes_a_few_sheets()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        byte[] pdf = await page.Page.PdfDataAsync(new PdfOptions { PreferCSSPageSize = true });
        string text = Encoding.Latin1.GetString(pdf);

        Assert.StartsWith("%PDF-", text, StringComparison.Ordinal);
        // Answer and signatures on the first sheet, pictures, the rest: five as it stands.
        Assert.InRange(SheetOfPdf().Count(text), 3, 7);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public async Task Sheet_that_is_signed_is_one_page(int warnings)
    {
        // A4 less the margins of the style sheet, 178 mm by 263 mm, at 96 pixels an inch.
        DespinReport report = SampleReport.Full with { Warnings = [.. Enumerable.Repeat(SampleReport.Full.Warnings[0], warnings)] };
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(report), width: 673);
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);

        Assert.InRange(await page.Ask<double>("document.getElementById('answer').getBoundingClientRect().bottom + scrollY"), 100, 994);
        Assert.Equal("page", await page.Ask<string>("getComputedStyle(document.querySelector('#answer + section')).breakBefore"));
    }

    [Fact]
    public async Task Text_from_a_case_file_stays_text_wherever_it_is_shown()
    {
        const string Hostile = "</title></script><script>alert(1)</script><img src=x onerror=alert(2)>{{style}}\"'&";
        DespinReport full = SampleReport.Full;
        DespinReport hostile = full with
        {
            Title = Hostile,
            Summary = Hostile,
            Case = new CaseIdentity(Hostile, Hostile, Hostile),
            Answers = [new(Hostile, Hostile, 1, 1, Hostile, Hostile, Solved: true)],
            Further = [new(Hostile, Hostile, [AnswerFigure.Si(Hostile, Hostile, 1, Hostile, Hostile), new AnswerWord(Hostile, Hostile, Hostile, Hostile)], Hostile)],
            Warnings = [Hostile],
            Requirements = [new(Hostile, Hostile, Hostile, 1, 1, Hostile, 1, Hostile, Verdict.NotMet, Hostile)],
            Unwinding = full.Unwinding! with { SpinUnit = Hostile, Phases = [new(Hostile, 0)] },
            Charts = [full.Charts[3] with { Title = Hostile, Caption = Hostile, X = new(Hostile, Hostile), Y = new(Hostile, Hostile), Events = [new(0.5, Hostile)], Marks = [new(0.5, 1, Hostile)] }],
            ResidualSpin = full.ResidualSpin! with { Title = Hostile, Caption = Hostile, Events = [new(0, Hostile)] },
            Sensitivity = new(new(Hostile, Hostile), [new(Hostile, Hostile, 1, -1)], Hostile),
            Assumptions = [Hostile],
            Checks = [new(Hostile, 0, 1)],
            Cautions = [Hostile],
            Inputs = [new(Hostile, Hostile, Hostile, Hostile, new Figure(1, Hostile))],
            Unused = [new(Hostile, Hostile)],
        };
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(hostile));

        Assert.Empty(page.Complaints);
        Assert.Empty(page.Requests);
        Assert.Equal(Hostile, await page.Ask<string>("document.querySelector('h1').textContent"));
        Assert.Equal(2, await page.Ask<int>("document.querySelectorAll('script').length"));
        Assert.Equal(0, await page.Ask<int>("document.querySelectorAll('img, [onerror]').length"));
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1400)]
    public async Task Words_without_end_do_not_widen_the_page(int width)
    {
        string word = new('m', 300);
        DespinReport full = SampleReport.Full;
        DespinReport wordy = full with
        {
            Title = word,
            Summary = word,
            Warnings = [word],
            Case = full.Case with { FileName = word },
            Requirements = [new(word, word, "< 2 rpm", 2, null, word, null, word, Verdict.NotShown, word)],
            Assumptions = [word],
            Checks = [new(word, 1, 1)],
            Inputs = [new(word, word, word, word)],
            Unused = [new(word, word)],
        };
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(wordy), width);

        Assert.True(await page.Ask<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
    }

    [Fact]
    public async Task Parts_without_data_are_left_out_or_said_to_be_absent()
    {
        var bare = new DespinReport
        {
            Title = "Bare",
            Summary = "Nothing but an answer.",
            Case = SampleReport.Full.Case,
            Answers = SampleReport.Full.Answers,
        };
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(bare), width: 390);

        Assert.Empty(page.Complaints);
        Assert.Equal(0, await page.Ask<int>("document.querySelectorAll('#unwinding, a[href=\"#unwinding\"], svg').length"));
        Assert.Contains("states no requirement", await page.Ask<string>("document.getElementById('answer').textContent"), StringComparison.Ordinal);
        Assert.Contains("no history", await page.Ask<string>("document.getElementById('pictures').textContent"), StringComparison.Ordinal);
        Assert.Contains("not sampled", await page.Ask<string>("document.getElementById('spread').textContent"), StringComparison.Ordinal);
        Assert.Contains("No check", await page.Ask<string>("document.getElementById('checks').textContent"), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex SheetOfPdf();

    /// <summary>Lists what is fainter than the limit: all text, or the samples of the curves in the legend.</summary>
    internal const string Contrast = """
        (what, limit) => {
          const parse = colour => { const [r, g, b, a = 1] = colour.match(/[\d.]+/g).map(Number); return { rgb: [r, g, b], a }; };
          const luminance = rgb => { const [r, g, b] = rgb.map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
          const ground = element => {
            for (let e = element; e; e = e.parentElement) {
              const c = parse(getComputedStyle(e).backgroundColor);
              if (c.a === 1) { return c.rgb; }
            }
            return [255, 255, 255];
          };
          const ratio = (a, b) => { const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
          const elements = what === 'curve'
            ? [...document.querySelectorAll('.legend line, .trail, .cord')]
            : [...document.querySelectorAll('body *')].filter(e => !['SCRIPT', 'OPTION'].includes(e.tagName) && [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()));
          if (elements.length === 0) { return ['nothing to measure']; }
          return elements.map(e => {
            const style = getComputedStyle(e);
            const paint = what === 'curve' ? style.stroke : e.closest('svg') ? style.fill : style.color;
            const r = ratio(parse(paint).rgb, ground(e));
            return r < limit ? `${r.toFixed(2)} ${e.tagName} ${e.getAttribute('class') ?? ''} ${e.textContent.slice(0, 30)}` : null;
          }).filter(x => x);
        }
        """;
}
