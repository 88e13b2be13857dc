using PressRun.Data.Presses;

namespace PressRun.Data.Copies;

/// <summary>What bringing in a list of sales asks of the copies ledger.</summary>
public interface ISalesLedger
{
    /// <summary>Every line of the press that stands, but for counts and what was settled against them, the earliest day first, as it would be written anew;
    /// read while it is gone through.</summary>
    IAsyncEnumerable<NewMovement> StandingAsync(PressId press, CancellationToken cancel = default);

    /// <summary>How many lines were ever written of each printing: the place up to which whoever reads the ledger next has seen it at least.</summary>
    Task<IReadOnlyDictionary<Guid, long>> PlacesAsync(PressId press, CancellationToken cancel = default);

    /// <summary>Writes the lines of an import, all or none. Lines whose id is there already are not written again.</summary>
    /// <param name="press">Whose ledger.</param>
    /// <param name="editionIds">Editions of all the lines.</param>
    /// <param name="movements">No counts: what was found needs a look at each. Enumerated again where the database was away for a moment.</param>
    /// <param name="importId">By which the import is taken back.</param>
    /// <param name="progress">Told how many are done.</param>
    /// <param name="seen">Up to which place of each printing the lines were held against the ledger, see <see cref="PlacesAsync"/>; they are held against what came after it
    /// before they are written. Null where they were held against nothing, and are not.</param>
    /// <param name="cancel">Stops it; nothing is written then.</param>
    /// <returns>What was written; null where one of the editions is not there any more, and nothing is written then.</returns>
    /// <exception cref="Import.ImportRefusedException">A line breaks a rule; nothing is written.</exception>
    /// <exception cref="WrittenMeanwhileException">What came after <paramref name="seen"/> may be some of the lines; nothing is written.</exception>
    Task<LedgerImport?> ImportAsync(
        PressId press, IReadOnlyCollection<Guid> editionIds, Func<IEnumerable<NewMovement>> movements, Guid importId, IProgress<int>? progress = null,
        IReadOnlyDictionary<Guid, long>? seen = null, CancellationToken cancel = default);

    /// <summary>Takes back every line of an import that has not been taken back already.</summary>
    Task<SaveResult<IReadOnlyList<MovementRecord>>> TakeBackImportAsync(PressId press, Guid importId, CancellationToken cancel = default);
}
