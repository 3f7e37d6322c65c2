using PuppeteerSharp;

namespace Momentum.Tool.Tests.Report;

/// <summary>
/// One headless browser for all tests that look at a page. It is taken from MOMENTUM_CHROMIUM or found on PATH; a machine
/// without one fails the tests, since a report nobody opened is not tested.
/// </summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] _names = ["chromium", "chromium-browser", "google-chrome"];
    private readonly DirectoryInfo _profile = Directory.CreateTempSubdirectory("momentum-chromium-");
    private IBrowser? _browser;

    /// <inheritdoc/>
    public async Task InitializeAsync() => _browser = await Puppeteer.LaunchAsync(new LaunchOptions
    {
        Headless = true,
        ExecutablePath = Find(),
        UserDataDir = _profile.FullName,
        Args =
        [
            "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync",
        ],
    });

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
            await _browser.DisposeAsync();
        }

        _profile.Delete(recursive: true);
    }

    /// <summary>Opens a page from a file of its own, as a reader would.</summary>
    internal async Task<OpenPage> OpenAsync(string html, int width = 1400, string scheme = "light", bool lessMotion = false)
    {
        IPage page = await _browser!.NewPageAsync();
        return await OpenPage.LoadAsync(page, html, Path.Combine(_profile.FullName, $"{Guid.NewGuid():N}.html"), width, scheme, lessMotion);
    }

    private static string Find()
    {
        if (Environment.GetEnvironmentVariable("MOMENTUM_CHROMIUM") is { Length: > 0 } stated)
        {
            return File.Exists(stated)
                ? stated
                : throw new FileNotFoundException($"MOMENTUM_CHROMIUM names '{stated}', which is not a file. Set it to the path of Chromium, or unset it.");
        }

        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        return _names.SelectMany(_ => folders, (name, folder) => Path.Combine(folder, name)).FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException($"No browser to open the report with: none of {string.Join(", ", _names)} is on PATH. Install Chromium, or set MOMENTUM_CHROMIUM to its path.");
    }
}
