using System.Buffers.Binary;
using System.Text;

namespace PressRun.Browser.Programs.Load;

/// <summary>
/// What a server tells a page to draw, as far as a client without a page needs it: attributes and what listens on them. It ends with where its tables lie: changed
/// components with their edits, the frames that edits point at, and texts. Source: ASP.NET Core's RenderBatchWriter, which the framework's own script reads the same way.
/// </summary>
internal sealed class RenderBatch(byte[] bytes)
{
    private const int Number = sizeof(int);
    private const int EditSize = 4 * Number;
    private const int FrameSize = 5 * Number;
    private const int Prepend = 1;
    private const int SetAttribute = 3;
    private const int ElementFrame = 1;
    private const int AttributeFrame = 3;

    private int Changed => At(bytes.Length - (5 * Number));

    private int Frames => At(bytes.Length - (4 * Number));

    private int Texts => At(bytes.Length - Number);

    /// <summary>True where an attribute of this name now has this value.</summary>
    public bool Says(string attribute, string value)
    {
        for (var frame = 0; frame < At(Frames); frame++)
        {
            if (IsAttribute(frame, attribute) && Text(Field(frame, 2)) == value)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The first new element of this name whose attributes are as wanted, with its component and its listeners; null where there is none.</summary>
    public (int Component, IReadOnlyDictionary<string, string?> Attributes, IReadOnlyDictionary<string, long> Listeners)? Find(
        string element, Func<IReadOnlyDictionary<string, string?>, bool> wanted)
    {
        foreach (var (component, first, count) in Prepended())
        {
            foreach (var frame in Enumerable.Range(first, count).Where(frame => Field(frame, 0) == ElementFrame && Text(Field(frame, 2)) == element))
            {
                var own = Enumerable.Range(frame + 1, At(Frames) - frame - 1).TakeWhile(at => Field(at, 0) == AttributeFrame).ToList();
                var attributes = own.ToDictionary(at => Text(Field(at, 1))!, at => Text(Field(at, 2)));
                if (wanted(attributes))
                {
                    return (component, attributes, own.Where(at => Listener(at) != 0).ToDictionary(at => Text(Field(at, 1))!, Listener));
                }
            }
        }

        return null;
    }

    /// <summary>Listeners that a component has been given anew, with the names of their attributes.</summary>
    public IEnumerable<(string Attribute, long Listener)> Relistened(int component) =>
        from edit in Edits()
        where edit.Component == component && edit.Kind == SetAttribute && Listener(edit.Frame) != 0
        select (Text(Field(edit.Frame, 1))!, Listener(edit.Frame));

    private IEnumerable<(int Component, int First, int Count)> Prepended() =>
        from edit in Edits()
        where edit.Kind == Prepend
        select (edit.Component, edit.Frame, Field(edit.Frame, 0) == ElementFrame ? Field(edit.Frame, 1) : 1);

    private IEnumerable<(int Component, int Kind, int Frame)> Edits()
    {
        for (var changed = 0; changed < At(Changed); changed++)
        {
            var component = At(Changed + ((1 + changed) * Number));
            for (var edit = 0; edit < At(component + Number); edit++)
            {
                var at = component + (2 * Number) + (edit * EditSize);
                yield return (At(component), At(at), At(at + (2 * Number)));
            }
        }
    }

    private bool IsAttribute(int frame, string name) => Field(frame, 0) == AttributeFrame && Text(Field(frame, 1)) == name;

    private int Field(int frame, int field) => At(Frames + Number + (frame * FrameSize) + (field * Number));

    private long Listener(int frame) => BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(Frames + Number + (frame * FrameSize) + (3 * Number)));

    // A text is as long as the number before it says, which takes as many bytes of seven bits as it needs.
    private string? Text(int index)
    {
        if (index < 0)
        {
            return null;
        }

        var (at, length, shift) = (At(Texts + (index * Number)), 0, 0);
        byte part;
        do
        {
            part = bytes[at++];
            length |= (part & 0x7f) << shift;
            shift += 7;
        }
        while (part >= 0x80);
        return Encoding.UTF8.GetString(bytes, at, length);
    }

    private int At(int offset) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(offset));
}
