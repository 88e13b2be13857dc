namespace PressRun.Data.Running;

/// <summary>What the host can set under <c>PressRun</c>; docs/operating.md has the table, and a test compares the two.</summary>
public sealed class PressRunOptions
{
    /// <summary>The section of the configuration.</summary>
    public const string Section = "PressRun";

    /// <summary>Folder of the private PostgreSQL; empty for the user's data folder.</summary>
    public string DataFolder { get; set; } = "";

    /// <summary>Folder with <c>postgres</c> and <c>initdb</c>; empty to look in the usual places.</summary>
    public string PostgresBin { get; set; } = "";

    /// <summary>Password for the connection string, where it is not written in it.</summary>
    public string DatabasePassword { get; set; } = "";

    /// <summary>True puts the sample press into an empty database.</summary>
    public bool Sample { get; set; }

    /// <summary>Folder or file of the sample press; empty for the one that comes with the program.</summary>
    public string SampleFrom { get; set; } = "";

    /// <summary><c>on</c> asks everybody to sign in; <c>off</c> is single-user mode, in which whoever reaches the address may do everything, and
    /// which is allowed on loopback addresses only.</summary>
    public string SignIn { get; set; } = "on";

    /// <summary>Mail address of somebody for whom the start writes a code for a new password into the log; empty for nobody.</summary>
    public string NewPasswordFor { get; set; } = "";

    /// <summary>Proxies whose forwarded headers are believed, as addresses separated by commas; empty for loopback ones only.</summary>
    public string TrustedProxies { get; set; } = "";

    /// <summary>Host name of the mail server that makers are told of their readers' answers by; empty sends no mail.</summary>
    public string MailServer { get; set; } = "";

    /// <summary>Its port.</summary>
    public int MailPort { get; set; } = 587;

    /// <summary><c>starttls</c> or <c>tls</c>; <c>none</c> sends in the clear, and takes no password.</summary>
    public string MailSecurity { get; set; } = "starttls";

    /// <summary>Name to sign in to the mail server by; empty to not sign in.</summary>
    public string MailUser { get; set; } = "";

    /// <summary>Password for that name.</summary>
    public string MailPassword { get; set; } = "";

    /// <summary>Address that mail comes from.</summary>
    public string MailFrom { get; set; } = "";

    /// <summary>Who is told in single-user mode; where people sign in, all owners and editors of a press are.</summary>
    public string MailTo { get; set; } = "";

    /// <summary>True where mail is sent.</summary>
    internal bool SendsMail => MailServer.Length > 0;

    /// <summary>True where people sign in.</summary>
    /// <exception cref="StartRefusedException">The setting is neither of its two words.</exception>
    public bool AsksToSignIn() => SignIn switch
    {
        "on" => true,
        "off" => false,
        _ => throw new StartRefusedException($"PressRun__SignIn is {SignIn}; write on or off."),
    };
}
