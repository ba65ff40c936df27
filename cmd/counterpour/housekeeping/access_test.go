package housekeeping

import (
	"bytes"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/webui/access"
)

// tryAccess runs one command by itself.
func tryAccess(cmd *cobra.Command, in io.Reader, args ...string) (out, errOut string, err error) {
	var o, e bytes.Buffer
	cmd.SilenceUsage, cmd.SilenceErrors = true, true
	cmd.SetArgs(args)
	cmd.SetIn(in)
	cmd.SetOut(&o)
	cmd.SetErr(&e)
	err = cmd.Execute()
	return o.String(), e.String(), err
}

// What the commands print is a file that lets the people in.
func TestPasscodeAndTokenCommands(t *testing.T) {
	const passcode = "harbour lamp nine"
	ana, said, err := tryAccess(newPasscode(), strings.NewReader(passcode+"\n"), "--name", "Ana", "--role", "lead")
	require.NoError(t, err)
	assert.Empty(t, said, "nobody is asked where nobody types")
	assert.Regexp(t, `^lead Ana \$argon2id\$v=19\$m=65536,t=3,p=4\$\S+\n$`, ana)

	script, said, err := tryAccess(newToken(), strings.NewReader(""), "--name", "till-script", "--role", "floor")
	require.NoError(t, err)
	assert.Regexp(t, `^floor till-script token-sha256:[0-9a-f]{64}\n$`, script)
	token := regexp.MustCompile(`cpt_\S+`).FindString(said)
	require.NotEmpty(t, token)
	assert.NotContains(t, script, token)

	path := filepath.Join(t.TempDir(), "passcodes")
	require.NoError(t, os.WriteFile(path, []byte(ana+script), 0o600))
	roster, err := access.ReadFile(path)
	require.NoError(t, err)
	guard := access.NewGuard(roster, access.Options{})
	h := guard.Wrap(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		p, _ := access.PersonOf(r.Context())
		_, _ = io.WriteString(w, p.Name+" "+p.Role.String())
	}))
	r := httptest.NewRequest(http.MethodGet, "/v1/templates", nil)
	r.Header.Set("Authorization", "Bearer "+token)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	assert.Equal(t, "till-script floor", w.Body.String())

	login := httptest.NewRequest(http.MethodPost, access.LoginPath, nil)
	assert.ErrorIs(t, guard.SignIn(httptest.NewRecorder(), login, "Ana", passcode+"x"), access.ErrWrong)
	w = httptest.NewRecorder()
	require.NoError(t, guard.SignIn(w, login, "Ana", passcode))
	r = httptest.NewRequest(http.MethodGet, "/", nil)
	r.AddCookie(w.Result().Cookies()[0])
	w = httptest.NewRecorder()
	h.ServeHTTP(w, r)
	assert.Equal(t, "Ana lead", w.Body.String())
}

func TestPasscodeAndTokenFaults(t *testing.T) {
	for _, c := range []struct {
		name    string
		command func() *cobra.Command
		input   string
		args    []string
		want    []string
	}{
		{"no name", newPasscode, "hunter2-hunter2", []string{"--role", "lead"}, []string{"--name is not given"}},
		{"no role", newPasscode, "hunter2-hunter2", []string{"--name", "Ana"}, []string{"--role is not given", "lead or floor"}},
		{"another role", newPasscode, "hunter2-hunter2", []string{"--name", "Ana", "--role", "owner"}, []string{"--role owner", "lead or floor"}},
		{"a name with a blank", newPasscode, "hunter2-hunter2", []string{"--name", "Ana B", "--role", "lead"}, []string{`--name: `, `"Ana B" is no name`}},
		{"no passcode", newPasscode, "", []string{"--name", "Ana", "--role", "lead"}, []string{"no passcode to read"}},
		{"an empty line", newPasscode, "\nhunter2-hunter2\n", []string{"--name", "Ana", "--role", "lead"}, []string{"no passcode to read"}},
		{"a short one", newPasscode, "hunter2\n", []string{"--name", "Ana", "--role", "lead"}, []string{"7 characters", "8 to 200"}},
		{"a long one", newPasscode, strings.Repeat("hunter2 ", 40), []string{"--name", "Ana", "--role", "lead"}, []string{"319 characters"}},
		{"two lines", newPasscode, "hunter2-hunter2\nhunter2-hunter2\n", []string{"--name", "Ana", "--role", "lead"}, []string{"more than one line"}},
		{"not text", newPasscode, "hunter2-\xff\xfe\n", []string{"--name", "Ana", "--role", "lead"}, []string{"not every keyboard"}},
		{"a token without a name", newToken, "", []string{"--role", "floor"}, []string{"--name is not given"}},
		{"a token without a role", newToken, "", []string{"--name", "till-script"}, []string{"--role is not given"}},
		{"a token for a name of signs", newToken, "", []string{"--name", "$$", "--role", "floor"}, []string{"is no name"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, said, err := tryAccess(c.command(), strings.NewReader(c.input), c.args...)
			require.Error(t, err)
			assert.Equal(t, terminal.ExitInput, terminal.ExitCode(err))
			assert.Empty(t, out)
			assert.Empty(t, said)
			for _, want := range c.want {
				assert.ErrorContains(t, err, want)
			}
			assert.NotContains(t, err.Error(), "hunter2", "a passcode is not repeated")
		})
	}
	broken := errors.New("the pipe broke")
	_, _, err := tryAccess(newPasscode(), brokenPipe{broken}, "--name", "Ana", "--role", "lead")
	assert.ErrorIs(t, err, broken)
	assert.Equal(t, terminal.ExitFailed, terminal.ExitCode(err))
}

type brokenPipe struct{ err error }

func (b brokenPipe) Read([]byte) (int, error) { return 0, b.err }

// On a terminal a passcode is typed twice, and taken once both are alike.
func TestTypedTwice(t *testing.T) {
	for name, c := range map[string]struct {
		typed []string
		want  string
		asked int
	}{
		"alike at once":     {[]string{"harbour lamp", "harbour lamp"}, "harbour lamp", 2},
		"mistyped at first": {[]string{"harbour lamp", "harbour lmap", "copper jigger", "copper jigger"}, "copper jigger", 4},
		"nothing typed":     {[]string{" "}, "", 1},
		"the input ends":    {[]string{"harbour lamp"}, "", 1},
	} {
		var said strings.Builder
		asked := 0
		got, err := typedTwice(&said, "Ana", func() (string, error) {
			if asked == len(c.typed) {
				return "", io.EOF
			}
			asked++
			return c.typed[asked-1], nil
		})
		assert.Equal(t, c.want, got, name)
		assert.Equal(t, c.want == "", err != nil, name)
		assert.Equal(t, c.asked, asked, name)
		assert.NotContains(t, said.String(), "lamp", "nothing typed is shown")
	}
}
