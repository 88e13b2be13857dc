using System.Net;
using System.Net.Sockets;

namespace PressRun.Web.People;

/// <summary>Where a visitor comes from, as far as tries are counted by it.</summary>
public static class Place
{
    private const int BytesOfHousehold = 64 / 8;

    /// <summary>The address; of one of the newer kind its first half, since a household has all addresses of the other half (RFC 4291, 2.5.4).</summary>
    public static string Of(IPAddress? address)
    {
        var plain = address is { IsIPv4MappedToIPv6: true } ? address.MapToIPv4() : address ?? IPAddress.None;
        return plain.AddressFamily == AddressFamily.InterNetworkV6 ? Convert.ToHexString(plain.GetAddressBytes().AsSpan(0, BytesOfHousehold)) : plain.ToString();
    }
}
