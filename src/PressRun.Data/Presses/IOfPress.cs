namespace PressRun.Data.Presses;

/// <summary>A row of a press's own data. Its key starts with the press, and a context opened for one press finds no other's.</summary>
internal interface IOfPress
{
    PressId PressId { get; set; }
}
