using System.Globalization;
using PressRun.Data.Archive;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Web.Layout;

namespace PressRun.Web.Start;

/// <summary>A whole press: saved as one file, taken in from one, taken out for good.</summary>
public sealed partial class WholePress(CurrentPress presses, PressArchiveStore archives, PressRemoval removal, TimeProvider time, ILogger<WholePress> log) : IDisposable
{
    /// <summary>Largest file that is taken in, in bytes: some eight times the sample press. It is read whole and takes many times its size meanwhile; a larger press is
    /// brought in by whoever runs the server.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    private const int MostName = 60;

    // Reading and writing a press is much work, for which nobody else has to wait.
    private readonly SemaphoreSlim turn = new(1);

    /// <summary>Maps the address under which an owner fetches a press.</summary>
    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/press/archive.json", (WholePress whole, HttpContext http) => whole.SendAsync(http));

    /// <summary>Makes a press of a file: all of it, or nothing and every problem.</summary>
    public async Task<Outcome<PressRecord>> TakeInAsync(ReadOnlyMemory<byte> utf8)
    {
        await turn.WaitAsync();
        try
        {
            var made = await Task.Run(() => archives.TakeInAsync(utf8));
            if (made.Succeeded)
            {
                TakenIn(log, made.Value.Id.Value);
            }

            return made;
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Takes a press out with everything in it; a sentence where it stays.</summary>
    public async Task<string?> TakeOutAsync(PressId press, string name)
    {
        if (!await removal.DeleteOwnAsync(press, name))
        {
            return Say($"The press is not called so. Write its name as it stands above.");
        }

        TakenOut(log, press.Value);
        return null;
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "The press {Press} was saved as a file by an owner.")]
    private static partial void Saved(ILogger log, Guid press);

    [LoggerMessage(Level = LogLevel.Information, Message = "The press {Press} was taken in from a file.")]
    private static partial void TakenIn(ILogger log, Guid press);

    [LoggerMessage(Level = LogLevel.Information, Message = "The press {Press} was taken out by an owner.")]
    private static partial void TakenOut(ILogger log, Guid press);

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private async Task<IResult> SendAsync(HttpContext http)
    {
        if (await presses.OfFileAsync(http) is not { } press)
        {
            return Results.NotFound();
        }

        if (!press.IsOwners)
        {
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        }

        await turn.WaitAsync(http.RequestAborted);
        try
        {
            if (await archives.ExportAsync(press.Record.Id, http.RequestAborted) is not { } archive)
            {
                return Results.NotFound();
            }

            Saved(log, press.Record.Id.Value);
            return Results.File(archive, "application/json", NameOf(press.Name));
        }
        finally
        {
            turn.Release();
        }
    }

    // With the day, so that yesterday's is not taken for today's.
    private string NameOf(string press)
    {
        var name = string.Concat(press.Where(sign => char.IsLetterOrDigit(sign) || sign is ' ' or '-')).Trim();
        return string.Create(CultureInfo.InvariantCulture, $"{(name.Length > MostName ? name[..MostName] : name)} {time.GetLocalNow():yyyy-MM-dd}.json");
    }
}
