using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;
using PressRun.Data.Access;

namespace PressRun.Web.People;

/// <summary>Lets what a circuit is told by its page be done on behalf of whoever opened it, whichever connection it came by.</summary>
internal sealed class VisitorOfCircuit(AuthenticationStateProvider states) : CircuitHandler
{
    public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(Func<CircuitInboundActivityContext, Task> next) => async context =>
    {
        var state = await states.GetAuthenticationStateAsync();
        using var visiting = Visiting.As(WhoClaims.Visitor(state.User));
        await next(context);
    };
}
