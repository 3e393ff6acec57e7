using LinkMargin.Web.Live;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Tests;

/// <summary>Whatever a page wants last is not cancelled, in whatever order it is set and taken.</summary>
public sealed class WishesTests
{
    private static readonly WatchRequest First = new() { Type = "watch", Generation = 1, Spot = "shelf" }, Second = First with { Generation = 2, Spot = "desk" };

    [Fact]
    public void A_request_is_taken_with_a_token_that_the_next_change_cancels()
    {
        using var wishes = new Wishes();
        Assert.Null(wishes.Take().Request);
        wishes.Change(First);
        (WatchRequest? request, CancellationToken stillWanted) = wishes.Take();
        Assert.Equal(First, request);
        Assert.False(stillWanted.IsCancellationRequested);

        wishes.Change(Second);
        Assert.True(stillWanted.IsCancellationRequested);
        (request, stillWanted) = wishes.Take();
        Assert.Equal(Second, request);
        Assert.False(stillWanted.IsCancellationRequested);

        wishes.Change();
        Assert.True(stillWanted.IsCancellationRequested);
        Assert.Equal(Second, wishes.Take().Request);
        Assert.False(wishes.Take().StillWanted.IsCancellationRequested);
    }

    [Fact]
    public async Task Each_change_wakes_and_many_of_them_at_least_once()
    {
        using var wishes = new Wishes();
        await using IAsyncEnumerator<bool> woken = wishes.Woken(CancellationToken.None).GetAsyncEnumerator();
        wishes.Change(First);
        wishes.Change(Second);
        Assert.True(await woken.MoveNextAsync());
        Assert.Equal(Second, wishes.Take().Request);
        ValueTask<bool> next = woken.MoveNextAsync();
        Assert.False(next.IsCompleted);
        wishes.Change();
        Assert.True(await next);
    }

    /// <summary>While one thread changes requests, another that waits, takes and works always ends with the last one, uncancelled.</summary>
    [Fact]
    public async Task The_last_request_is_never_left_cancelled()
    {
        const int Rounds = 200, Requests = 50;
        for (int round = 0; round < Rounds; round++)
        {
            using var wishes = new Wishes();
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
            Task changing = Task.Run(() =>
            {
                for (int i = 1; i <= Requests; i++)
                {
                    wishes.Change(First with { Generation = i });
                }
            });
            await foreach (bool _ in wishes.Woken(patience.Token))
            {
                (WatchRequest? request, CancellationToken stillWanted) = wishes.Take();
                if (request?.Generation == Requests)
                {
                    Assert.False(stillWanted.IsCancellationRequested);
                    break;
                }
            }

            await changing;
        }
    }
}
