// Keeps a choice for a year. Over TLS the name ties the cookie to this host, as the server's own do (HostCookies.cs).
const YEAR = 31536000;

export function keepChoice(name, value) {
  const tied = location.protocol === 'https:';
  document.cookie = `${tied ? '__Host-' : ''}${name}=${value}; path=/; max-age=${YEAR}; samesite=lax${tied ? '; secure' : ''}`;
}
