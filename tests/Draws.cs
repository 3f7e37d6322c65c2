[assembly: Momentum.Tests.Draws]

namespace Momentum.Tests;

/// <summary>
/// Property tests draw the same cases in every run, so that one commit gets one verdict; with MOMENTUM_FRESH_DRAWS=1, as
/// tests/explore sets it, they draw anew. A failure prints its seed either way.
/// </summary>
[AttributeUsage(AttributeTargets.Assembly)]
internal sealed class DrawsAttribute : FsCheck.Xunit.PropertiesAttribute
{
    public DrawsAttribute()
    {
        if (Environment.GetEnvironmentVariable("MOMENTUM_FRESH_DRAWS") != "1")
        {
            Replay = "4871623909,271828183";
        }
    }
}
