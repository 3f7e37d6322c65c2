using System.Net;
using System.Text.Json.Nodes;
using CaseService;
using Microsoft.AspNetCore.Builder;

namespace Momentum.Cases.Tests;

/// <summary>The example service answers cases over HTTP.</summary>
public sealed class ServiceTests
{
    [Fact]
    public async Task The_example_service_answers_a_case_reports_it_and_tells_what_is_wrong_with_one()
    {
        await using WebApplication service = Service.Build(["--urls", "http://127.0.0.1:0", "--Logging:LogLevel:Default", "Warning"]);
        await service.StartAsync();
        using var client = new HttpClient { BaseAddress = new Uri(service.Urls.Single()), Timeout = TimeSpan.FromMinutes(5) };
        string good = Repository.Example("tern-customary.toml");

        HttpResponseMessage answer = await client.PostAsync("answer", new StringContent(good));
        Assert.Equal((HttpStatusCode.OK, "application/json"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.NotNull(JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["cord_length_m"]);

        HttpResponseMessage report = await client.PostAsync("report", new StringContent(good));
        Assert.Equal((HttpStatusCode.OK, "text/html"), (report.StatusCode, report.Content.Headers.ContentType!.MediaType));
        Assert.StartsWith("<!DOCTYPE html>", await report.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        HttpResponseMessage refused = await client.PostAsync("answer", new StringContent("format = 1\n"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.NotEmpty(JsonNode.Parse(await refused.Content.ReadAsStringAsync())!["problems"]!.AsArray());

        Assert.Contains("json-schema.org", await client.GetStringAsync("schema"), StringComparison.Ordinal);
    }
}
