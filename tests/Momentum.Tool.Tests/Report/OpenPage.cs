using PuppeteerSharp;

namespace Momentum.Tool.Tests.Report;

/// <summary>A page in the browser, with all that it complained about and asked for.</summary>
internal sealed class OpenPage : IAsyncDisposable
{
    private readonly string _file;

    private OpenPage(IPage page, string file)
    {
        Page = page;
        _file = file;
    }

    public IPage Page { get; }

    /// <summary>Console errors and warnings, uncaught exceptions, dialogs.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Addresses asked for, other than the page itself and data that it carries.</summary>
    public List<string> Requests { get; } = [];

    public static async Task<OpenPage> LoadAsync(IPage page, string html, string file, int width, string scheme, bool lessMotion)
    {
        var open = new OpenPage(page, file);
        page.Console += (_, e) =>
        {
            if (e.Message.Type is ConsoleType.Error or ConsoleType.Warning)
            {
                open.Complaints.Add($"{e.Message.Type}: {e.Message.Text}");
            }
        };
        page.PageError += (_, e) => open.Complaints.Add(e.Message);
        page.Dialog += async (_, e) =>
        {
            open.Complaints.Add($"dialog: {e.Dialog.Message}");
            await e.Dialog.Dismiss();
        };
        await File.WriteAllTextAsync(file, html);
        string address = new Uri(file).AbsoluteUri;
        page.Request += (_, e) =>
        {
            if (e.Request.Url.Split('#')[0] != address && !e.Request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                open.Requests.Add(e.Request.Url);
            }
        };
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
        await page.EmulateMediaFeaturesAsync(
        [
            new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = scheme },
            new MediaFeatureValue { MediaFeature = MediaFeature.PrefersReducedMotion, Value = lessMotion ? "reduce" : "no-preference" },
        ]);
        await page.GoToAsync(address);
        return open;
    }

    public Task<T> Ask<T>(string script) => Page.EvaluateExpressionAsync<T>(script);

    /// <summary>An attribute of an element as a number.</summary>
    public Task<double> Number(string id, string attribute) => Ask<double>($"Number(document.getElementById('{id}').getAttribute('{attribute}'))");

    /// <summary>An attribute of something on the stage, in metres of the picture.</summary>
    public async Task<double> Metres(string id, string attribute) =>
        await Number(id, attribute) / await Ask<double>("Number(document.getElementById('stage').dataset.scale)");

    /// <summary>Text of an element.</summary>
    public Task<string> Text(string id) => Ask<string>($"document.getElementById('{id}').textContent");

    /// <summary>Where the slider stands, s.</summary>
    public Task<double> Time() => Ask<double>("Number(document.getElementById('time').value)");

    public async ValueTask DisposeAsync()
    {
        await Page.CloseAsync();
        File.Delete(_file);
    }
}
