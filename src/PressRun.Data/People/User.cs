using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace PressRun.Data.People;

/// <summary>Somebody with an account on this server. What they may do in a press stands in their membership of it.</summary>
public sealed class User : IdentityUser<Guid>
{
    /// <summary>Longest name, in characters.</summary>
    public const int LongestName = 80;

    /// <summary>Longest mail address, in characters (RFC 5321 leaves 254 for one between its brackets).</summary>
    public const int LongestEmail = 254;

    /// <summary>True for what somebody may call a person, or a passkey, an invitation or a key by which they know it again.</summary>
    public static bool IsName(string? text) => text?.Trim() is { Length: <= LongestName } name && PlainText.IsName(name);

    /// <summary>True for what somebody may sign in by and be told by.</summary>
    public static bool IsEmail(string? text) => text is not null && MailAddresses.Is(text);

    /// <summary>What others read.</summary>
    public string Name { get; set; } = "";

    /// <summary>True for the first one, who set the server up: may make presses, and gets those that have no people yet.</summary>
    public bool IsHost { get; set; }

    /// <summary>When the account was made.</summary>
    public DateTimeOffset CreatedAt { get; set; }
}

internal sealed class UserConfiguration : IEntityTypeConfiguration<User>
{
    public void Configure(EntityTypeBuilder<User> builder)
    {
        builder.ToTable("users");
        builder.Property(user => user.Name).HasMaxLength(User.LongestName);
        builder.Property(user => user.UserName).HasMaxLength(User.LongestEmail);
        builder.Property(user => user.NormalizedUserName).HasMaxLength(User.LongestEmail);
        builder.Property(user => user.Email).HasMaxLength(User.LongestEmail);
        builder.Property(user => user.NormalizedEmail).HasMaxLength(User.LongestEmail);
        builder.Property(user => user.ConcurrencyStamp).IsConcurrencyToken();
        builder.HasIndex(user => user.NormalizedUserName).IsUnique();
        builder.HasIndex(user => user.NormalizedEmail).IsUnique();

        // Nothing is sent by text message, and tries are counted for every address alike, whether or not somebody has it.
        builder.Ignore(user => user.PhoneNumber).Ignore(user => user.PhoneNumberConfirmed).Ignore(user => user.TwoFactorEnabled)
            .Ignore(user => user.LockoutEnabled).Ignore(user => user.LockoutEnd).Ignore(user => user.AccessFailedCount).Ignore(user => user.EmailConfirmed);
    }
}

internal sealed class UserLoginConfiguration : IEntityTypeConfiguration<IdentityUserLogin<Guid>>
{
    public void Configure(EntityTypeBuilder<IdentityUserLogin<Guid>> builder)
    {
        builder.ToTable("user_logins");
        builder.HasKey(login => new { login.LoginProvider, login.ProviderKey });
        builder.HasOne<User>().WithMany().HasForeignKey(login => login.UserId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class UserPasskeyConfiguration : IEntityTypeConfiguration<IdentityUserPasskey<Guid>>
{
    public void Configure(EntityTypeBuilder<IdentityUserPasskey<Guid>> builder)
    {
        builder.ToTable("user_passkeys");
        builder.HasKey(passkey => passkey.CredentialId);
        builder.OwnsOne(passkey => passkey.Data).ToJson();
        builder.HasOne<User>().WithMany().HasForeignKey(passkey => passkey.UserId).OnDelete(DeleteBehavior.Cascade);
    }
}
