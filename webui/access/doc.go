// Package access says who may do what on a server that more than its own machine
// reaches: a file of people, a sign-in, and a guard in front of everything.
//
// # Words
//
// A [Person] has a name and a [Role]: a lead may do everything; the floor marks
// outs, notes how covers and training went, and reads everything. A [Roster] is the
// file of them, a line each:
//
//	# role name what-they-show
//	lead  Ana         $argon2id$v=19$m=65536,t=3,p=4$<salt>$<hash>
//	floor till-script token-sha256:<64 hexadecimal digits>
//
// A passcode is for people: it is typed on a page and begins a session, which is
// a cookie. A token is for scripts: it travels with each request, as
// Authorization: Bearer. The roster holds neither, only what they are checked
// against: argon2id (RFC 9106) for a passcode, which people choose and so can be
// guessed, SHA-256 for a token, which is 256 random bits and cannot.
//
// # What is held
//
//   - [Guard.Wrap] marks every request that it lets through, so [May] can tell a
//     server without a guard, where everybody is a lead because only their own
//     machine reaches it, from a request that nobody has signed in for, which may
//     do nothing. Ask with the context of the request and no other.
//   - Sessions are kept where all servers of a house look ([Options.Commons]), so
//     that any of them serves any request, and a restart signs nobody out. What is
//     kept is a hash of the cookie and a proof that needs the roster: neither reading
//     nor writing there lets anybody in.
//   - Whoever is taken out of the roster, or has another passcode in it, is out within
//     seconds at every server that reads it ([Guard.Keep]), and so is whoever signs
//     out at another server. While the store is silent, open sessions go on and
//     nobody signs in.
//   - A check of a passcode costs memory on purpose. Few run at once, and how many
//     fail is limited for each address, and for each name from one and from all. A name that is not in
//     the roster is told apart neither by the answer nor by the work.
//   - A device on which somebody has signed in is known by a cookie. It lets nobody
//     in; but what others try with the name does not make it wait.
//   - What is open for a session, such as a line of events, ends with it.
//   - Forms from other sites are refused, signing in included.
//
// # What is not
//
// Nothing here encrypts. On a network that others use, put a server that speaks
// TLS in front and set [Options.Secure]; without it, whoever listens reads the
// passcodes. A stranger with many addresses who knows a name can hold up its sign-in
// on new devices for up to five minutes at a time; known devices and sessions that
// are open are not touched. New devices behind one address share its failures.
package access
