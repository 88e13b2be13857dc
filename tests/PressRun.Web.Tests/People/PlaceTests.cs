using System.Net;
using PressRun.Web.People;

namespace PressRun.Web.Tests.People;

public class PlaceTests
{
    // The addresses are those that RFC 5737 and RFC 3849 set aside for documents.
    [Theory]
    [InlineData("192.0.2.7", "192.0.2.7", true)]
    [InlineData("192.0.2.7", "192.0.2.8", false)]
    [InlineData("192.0.2.7", "::ffff:192.0.2.7", true)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:2:ffff:ffff:ffff:ffff", true)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:3::1", false)]
    public void A_place_is_an_address_or_the_household_that_it_belongs_to(string one, string other, bool same) =>
        Assert.Equal(same, Place.Of(IPAddress.Parse(one)) == Place.Of(IPAddress.Parse(other)));
}
