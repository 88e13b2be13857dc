using Npgsql;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests.People;

/// <summary>Puts people and their places in presses straight into the database, as an earlier day would have.</summary>
internal static class Household
{
    public static async Task<Visitor.Person> PersonAsync(Stores stores, string name, bool isHost = false)
    {
        await using var db = stores.Context(default);
        var user = new User { Id = Guid.NewGuid(), Name = name, Email = $"{name}@example.org", UserName = name, NormalizedUserName = name, NormalizedEmail = name, IsHost = isHost };
        db.Users.Add(user);
        await db.SaveChangesAsync();
        return new Visitor.Person(user.Id, (await stores.Sessions.BeginAsync(user, "A browser on Linux"))!.Value);
    }

    /// <summary>Signs somebody in once more.</summary>
    public static async Task<Guid> SignInAsync(Stores stores, Visitor.Person person, string device) => (await stores.Sessions.BeginAsync(await FindAsync(stores, person), device))!.Value;

    /// <summary>Somebody's account as it stands.</summary>
    public static async Task<User> FindAsync(Stores stores, Visitor.Person person)
    {
        await using var db = stores.Context(default);
        return await db.Users.AsNoTracking().SingleAsync(user => user.Id == person.UserId);
    }

    public static async Task<Visitor.Person> MemberAsync(Stores stores, PressId press, string name, PressRole role)
    {
        var person = await PersonAsync(stores, name);
        await JoinAsync(stores, press, person, role);
        return person;
    }

    public static async Task JoinAsync(Stores stores, PressId press, Visitor.Person person, PressRole role)
    {
        await using var db = stores.Context(press);
        db.Memberships.Add(new MembershipRow { PressId = press, UserId = person.UserId, Role = role, Since = DateTimeOffset.UnixEpoch });
        await db.SaveChangesAsync();
    }

    /// <summary>A press with everything in it, made by the program.</summary>
    public static async Task<SmallPress> PressAsync(Stores stores)
    {
        using var program = Visiting.As(new Visitor.Program());
        return await SmallPress.CreateAsync(stores);
    }

    public static async Task<T> AsAsync<T>(Visitor visitor, Func<Task<T>> work)
    {
        using var visiting = Visiting.As(visitor);
        return await work();
    }

    public static async Task AsAsync(Visitor visitor, Func<Task> work)
    {
        using var visiting = Visiting.As(visitor);
        await work();
    }
}
