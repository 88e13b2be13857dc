namespace PressRun.Data;

/// <summary>Text that PostgreSQL stores and a page can show.</summary>
internal static class PlainText
{
    /// <summary>True where it has no control characters, and every surrogate its other half.</summary>
    public static bool Is(string text)
    {
        for (var index = 0; index < text.Length; index++)
        {
            if (char.IsControl(text[index]) || (char.IsSurrogate(text[index]) && !char.IsSurrogatePair(text, index++)))
            {
                return false;
            }
        }

        return true;
    }
}
