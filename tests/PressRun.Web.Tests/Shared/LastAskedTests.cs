using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public sealed class LastAskedTests
{
    [Fact]
    public async Task A_slow_answer_never_takes_the_place_of_the_answer_to_a_later_question()
    {
        using var asked = new LastAsked();
        var slow = new TaskCompletionSource<string>();
        var shown = "";
        var first = ShowAsync(slow.Task);
        await ShowAsync(Task.FromResult("archived"));
        slow.SetResult("due");
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);

        Assert.Equal("archived", shown);

        async Task ShowAsync(Task<string> answer) => shown = await asked.AnswerAsync(_ => answer);
    }

    [Fact]
    public async Task A_question_is_told_when_another_is_asked_and_not_before()
    {
        using var asked = new LastAsked();
        var told = CancellationToken.None;
        Assert.Equal(1, await asked.AnswerAsync(cancel => Given(cancel, 1)));
        Assert.False(told.IsCancellationRequested);
        var first = told;
        Assert.Equal(2, await asked.AnswerAsync(cancel => Given(cancel, 2)));

        Assert.True(first.IsCancellationRequested);
        Assert.False(told.IsCancellationRequested);

        Task<int> Given(CancellationToken cancel, int answer)
        {
            told = cancel;
            return Task.FromResult(answer);
        }
    }

    [Fact]
    public async Task A_question_that_fails_after_another_was_asked_fails_nobody()
    {
        using var asked = new LastAsked();
        var slow = new TaskCompletionSource<int>();
        var first = asked.AnswerAsync(_ => slow.Task);
        await asked.AnswerAsync(_ => Task.FromResult(2));
        slow.SetException(new InvalidOperationException("Away."));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        await Assert.ThrowsAsync<InvalidOperationException>(() => asked.AnswerAsync<int>(_ => throw new InvalidOperationException("Away.")));
    }

    [Fact]
    public async Task Nobody_is_answered_once_the_page_is_left()
    {
        var asked = new LastAsked();
        var slow = new TaskCompletionSource<int>();
        var first = asked.AnswerAsync(_ => slow.Task);
        asked.Dispose();
        slow.SetResult(1);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
    }
}
