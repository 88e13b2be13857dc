using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using PressRun.Web.People;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.People;

/// <summary>What the log is told of those who were not let in.</summary>
public sealed class RefusalsTests : IDisposable
{
    // What bars an address by docs/operating.md.
    private const int MaxRetry = 10;

    private readonly HeardLines told = new();
    private readonly LoggerFactory logging;
    private readonly HandClock clock = new();
    private readonly Refusals refusals;

    public RefusalsTests()
    {
        logging = new LoggerFactory([told]);
        refusals = new Refusals(logging.CreateLogger<Refusals>(), clock);
    }

    [Fact]
    public void Whoever_guesses_on_and_on_is_told_of_often_enough_to_be_barred_and_does_not_fill_the_log()
    {
        for (var guess = 0; guess < 1000; guess++)
        {
            refusals.Tell(From("192.0.2.1"), Refusals.Key);
        }

        Assert.InRange(told.Lines.Count, MaxRetry, Refusals.MostOfAddress);
        Assert.All(told.Lines, line => Assert.Equal("Refused sign-in from 192.0.2.1: wrong key", line));
        refusals.Tell(From("192.0.2.2"), Refusals.Password);
        Assert.Equal("Refused sign-in from 192.0.2.2: wrong address or password", told.Lines.Last());
    }

    [Fact]
    public void A_household_of_many_addresses_is_one_place_and_is_told_of_again_after_a_quarter_of_an_hour()
    {
        for (var guess = 0; guess < 1000; guess++)
        {
            refusals.Tell(From($"2001:db8:0:1::{guess:x}"), Refusals.Secret);
        }

        Assert.Equal(Refusals.MostOfHousehold, told.Lines.Count);
        clock.Pass(Refusals.Within);
        refusals.Tell(From("2001:db8:0:1::7"), Refusals.Secret);
        Assert.Equal("Refused sign-in from 2001:db8:0:1::7: wrong code, invitation or passkey", told.Lines.Last());
    }

    [Fact]
    public void However_many_places_try_the_log_has_room_and_says_once_that_more_is_left_out_and_guesses_at_keys_hide_none_at_passwords()
    {
        TellOfMany(Refusals.Key);
        Assert.Equal(Refusals.MostOfSecrets + 1, told.Lines.Count);
        Assert.Equal("More was refused than is told here: further lines of codes, invitations, passkeys and keys are left out for up to a quarter of an hour", told.Lines.Last());
        TellOfMany(Refusals.Secret);
        Assert.Equal(Refusals.MostOfSecrets + 1, told.Lines.Count);

        TellOfMany(Refusals.Password);
        Assert.Equal(Refusals.MostOfSecrets + Refusals.MostOfPasswords + 2, told.Lines.Count);
        Assert.Equal("More was refused than is told here: further lines of passwords are left out for up to a quarter of an hour", told.Lines.Last());

        clock.Pass(Refusals.Within);
        refusals.Tell(From("192.0.2.3"), Refusals.Key);
        Assert.Equal("Refused sign-in from 192.0.2.3: wrong key", told.Lines.Last());
    }

    [Fact]
    public void What_costs_nothing_to_get_wrong_hides_nothing_else_that_a_place_tries()
    {
        for (var guess = 0; guess < 1000; guess++)
        {
            refusals.Tell(From("192.0.2.1"), Refusals.Secret);
        }

        refusals.Tell(From("192.0.2.1"), Refusals.Password);
        Assert.Equal("Refused sign-in from 192.0.2.1: wrong address or password", told.Lines.Last());
    }

    [Fact]
    public void That_an_account_is_closed_is_told_however_many_lines_there_are_and_these_have_an_end_too()
    {
        TellOfMany(Refusals.Key);
        TellOfMany(Refusals.Password);

        refusals.TellClosed(From("192.0.2.4"), "eda@example.org");
        Assert.Equal("Refused sign-in from 192.0.2.4: too many tries of the account e...@example.org, which is closed to new devices for up to an hour", told.Lines.Last());
        for (var account = 0; account < 60_000; account++)
        {
            refusals.TellClosed(From("192.0.2.5"), $"eda@{account}.example");
        }

        Assert.Equal(20_003, told.Lines.Count);
        Assert.Equal("More was refused than is told here: further lines of closed accounts are left out for up to a quarter of an hour", told.Lines.Last());
    }

    [Fact]
    public void Addresses_of_one_household_that_are_tried_in_turn_are_each_told_of_often_enough_to_be_barred()
    {
        for (var guess = 0; guess < 66; guess++)
        {
            refusals.Tell(From($"2001:db8:0:1::{guess % 3}"), Refusals.Secret);
        }

        Assert.All(told.Lines.CountBy(line => line), each => Assert.InRange(each.Value, MaxRetry, Refusals.MostOfAddress));
        Assert.Equal(3, told.Lines.Distinct().Count());
    }

    [Fact]
    public void One_address_that_guesses_on_and_on_hides_no_other_of_its_household()
    {
        for (var guess = 0; guess < 1000; guess++)
        {
            refusals.Tell(From("2001:db8:0:1::1"), Refusals.Secret);
        }

        Assert.Equal(Refusals.MostOfAddress, told.Lines.Count);
        refusals.Tell(From("2001:db8:0:1::2"), Refusals.Secret);
        Assert.Equal("Refused sign-in from 2001:db8:0:1::2: wrong code, invitation or passkey", told.Lines.Last());
    }

    public void Dispose() => logging.Dispose();

    private void TellOfMany(string reason)
    {
        for (var place = 0; place < 60_000; place++)
        {
            refusals.Tell(From(new IPAddress([10, 0, (byte)(place / 256), (byte)place]).ToString()), reason);
        }
    }

    private static DefaultHttpContext From(string address)
    {
        var http = new DefaultHttpContext();
        http.Connection.RemoteIpAddress = IPAddress.Parse(address);
        return http;
    }
}
