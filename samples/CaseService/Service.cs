using System.Net.Mime;
using Momentum;
using Momentum.Cases;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;

namespace CaseService;

/// <summary>
/// A web service that answers de-spin cases: the case is the body of the request, the answer that of the response.
/// <c>curl --data-binary @case.toml localhost:5000/answer</c>
/// </summary>
public static class Service
{
    /// <summary>The service, ready to run.</summary>
    public static WebApplication Build(string[] args)
    {
        WebApplication service = WebApplication.Create(args);
        service.MapPost("/answer", (HttpRequest request, CancellationToken gone) => Answered(request, MediaTypeNames.Application.Json, JsonReport.Write, gone));
        service.MapPost("/report", (HttpRequest request, CancellationToken gone) => Answered(request, MediaTypeNames.Text.Html, HtmlReport.Write, gone));
        service.MapGet("/schema", () => Results.Text(CaseSchema.Write(), "application/schema+json"));
        return service;
    }

    private static async Task<IResult> Answered(HttpRequest request, string type, Action<Answer, Stream> write, CancellationToken gone)
    {
        using var body = new StreamReader(request.Body);
        var judgement = Judgement.Of(CaseReader.Read(await body.ReadToEndAsync(gone)));
        var result = new MemoryStream();
        if (judgement.HasErrors)
        {
            JsonReport.Write(judgement.Problems, result);
            return Results.Text(result.ToArray(), MediaTypeNames.Application.Json, StatusCodes.Status400BadRequest);
        }

        try
        {
            write(Solver.Solve(judgement, cancellation: gone), result);
            return Results.Bytes(result.ToArray(), type);
        }
        catch (ComputationRefusedException refusal)
        {
            return Results.Problem(refusal.Message, statusCode: StatusCodes.Status422UnprocessableEntity);
        }
    }
}
