namespace PressRun.Data.Running;

/// <summary>What a start does with mail that waits in the database.</summary>
internal enum WaitingMail
{
    /// <summary>It stays as it is, unless the database was restored from a backup.</summary>
    Leave,

    /// <summary>It is kept back.</summary>
    Hold,

    /// <summary>It is sent, also what was kept back.</summary>
    Send,

    /// <summary>It is taken out.</summary>
    Drop,
}

/// <summary>What the host can set under <c>PressRun</c>. What each sets is said once, where it is declared: the table of docs/operating.md is made of it.</summary>
public sealed class PressRunOptions
{
    /// <summary>The section of the configuration.</summary>
    public const string Section = "PressRun";

    [Setting("none", "password for that connection; takes the place of one that is written in it")]
    public string DatabasePassword { get; set; } = "";

    [Setting("`~/.local/share/PressRun`, for root `/var/lib/pressrun`", "folder of the private PostgreSQL; its path must stay under some 80 characters, or the socket goes to `/tmp`")]
    public string DataFolder { get; set; } = "";

    [Setting("the usual folders", "folder with `postgres`, `initdb` and `pg_ctl`")]
    public string PostgresBin { get; set; } = "";

    [Setting("`false`; `start.sh` sets `true`", "puts the sample press into an empty database")]
    public bool Sample { get; set; }

    [Setting("`seed-data` beside the program", "another press archive, a folder or a file, to put into an empty database")]
    public string SampleFrom { get; set; } = "";

    [Setting("`on`; `start.sh` sets `off` on a loopback address", "`on` asks people to sign in, `off` is single-user mode")]
    public string SignIn { get; set; } = "on";

    [Setting("none", "mail address of somebody for whom the start writes a code for a new password into the log")]
    public string NewPasswordFor { get; set; } = "";

    [Setting("none", "mail address of somebody [whose account the start deletes](#removing-somebody); for one start")]
    public string DeleteAccount { get; set; } = "";

    [Setting("none", "a press [that the start deletes](#removing-somebody) with everything in it: its name shows its id in the log, its id deletes it; for one start")]
    public string DeletePress { get; set; } = "";

    [Setting("none", "https address of a server by which people [may sign in too](people.md) (OpenID Connect), without `/.well-known/openid-configuration`")]
    public string OpenIdServer { get; set; } = "";

    [Setting("none", "the name that it knows PressRun by")]
    public string OpenIdClient { get; set; } = "";

    [Setting("none", "what PressRun shows it; better from a file. Left out where it takes PressRun for a public client")]
    public string OpenIdSecret { get; set; } = "";

    [Setting("`another server`", "what the button calls it")]
    public string OpenIdName { get; set; } = "another server";

    [Setting("none: no forwarded header is believed", "addresses or networks (`172.18.0.0/16`) of proxies whose forwarded headers are believed, separated by commas")]
    public string TrustedProxies { get; set; } = "";

    [Setting("none: no mail is sent", "host name of the mail server that makers are told of their readers' answers by")]
    public string MailServer { get; set; } = "";

    [Setting("`587`", "its port")]
    public int MailPort { get; set; } = 587;

    [Setting("`starttls`", "`starttls` or `tls`; `none` sends in the clear and takes no password")]
    public string MailSecurity { get; set; } = "starttls";

    [Setting("none", "name to sign in to the mail server by")]
    public string MailUser { get; set; } = "";

    [Setting("none", "password for it; better from a file")]
    public string MailPassword { get; set; } = "";

    [Setting("none", "address that mail comes from")]
    public string MailFrom { get; set; } = "";

    [Setting("none", "who is told in single-user mode; where people sign in, all owners and editors of a press are who have not said that they want none")]
    public string MailTo { get; set; } = "";

    [Setting("none", "what a start does with mail that waits in the database: `hold` keeps it back, `send` sends it, also what was kept back, `drop` takes it out; for one start")]
    public string WaitingMail { get; set; } = "";

    /// <summary>True where mail is sent.</summary>
    internal bool SendsMail => MailServer.Length > 0;

    /// <summary>What is done with mail that waits.</summary>
    /// <exception cref="StartRefusedException">The setting is none of its words.</exception>
    internal WaitingMail MailThatWaits() => WaitingMail switch
    {
        "" => Running.WaitingMail.Leave,
        "hold" => Running.WaitingMail.Hold,
        "send" => Running.WaitingMail.Send,
        "drop" => Running.WaitingMail.Drop,
        _ => throw new StartRefusedException($"PressRun__WaitingMail is {WaitingMail}; write hold, send or drop."),
    };

    /// <summary>True where people sign in.</summary>
    /// <exception cref="StartRefusedException">The setting is neither of its two words.</exception>
    public bool AsksToSignIn() => SignIn switch
    {
        "on" => true,
        "off" => false,
        _ => throw new StartRefusedException($"PressRun__SignIn is {SignIn}; write on or off."),
    };
}
