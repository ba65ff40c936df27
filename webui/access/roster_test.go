package access

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestParse(t *testing.T) {
	b, err := Parse("\ufeff" + strings.ReplaceAll(bookText(), "\n", "\r\n"))
	require.NoError(t, err)
	require.Len(t, b.people, 2)
	assert.Equal(t, Person{"Ana", Lead}, b.people[b.byName["ana"]].Person)
	assert.Equal(t, Person{"Bo", Floor}, b.people[b.byName["bo"]].Person)
	require.Len(t, b.bearers, 1)
	assert.Equal(t, Person{"till-script", Floor}, b.bearers[0].Person)
}

func TestRosterFaults(t *testing.T) {
	good := bookText()
	_, sum := scriptToken()
	for _, c := range []struct {
		name, text string
		location   string
		want       []string
	}{
		{"nothing", "", "", []string{"nobody in it is a lead", "counterpour house passcode --role lead"}},
		{"no lead", "floor Bo " + boHash(), "", []string{"nobody in it is a lead"}},
		{"only notes", "# lead Ana " + anaHash(), "", []string{"nobody in it is a lead"}},
		{"no such role", good + "owner Cy " + boHash(), "line 6", []string{`"owner" is no role`, "lead or floor"}},
		{"a capital", good + "Lead Cy " + boHash(), "line 6", []string{`"Lead" is no role`}},
		{"a word short", good + "floor Cy", "line 6", []string{"2 words", "write three"}},
		{"a word over", good + "floor Cy Young " + boHash(), "line 6", []string{"4 words"}},
		{"the rest a note", good + "floor Cy # later", "line 6", []string{"2 words"}},
		{"a name with a sign", good + "floor C$y " + boHash(), "line 6", []string{`"C$y" is no name`, "letters, digits"}},
		{"a name of digits", good + "floor 12345678 " + boHash(), "line 6", []string{`"12345678" is no name`}},
		{"a long name", good + "floor " + strings.Repeat("y", 41) + " " + boHash(), "line 6", []string{"up to 40 letters"}},
		{"a name twice", good + "lead ANA " + boHash(), "line 6", []string{"ANA is on line 2 already"}},
		{"a script with a person's name", good + "floor bo " + sum, "line 6", []string{"bo is on line 3 already"}},
		{"a weak hash", good + "floor Cy " + strings.Replace(boHash(), "m=7168", "m=64", 1), "line 6", []string{"m=64 is out of range", "--role floor --name Cy"}},
		{"a passcode as it is", good + "floor Cy hunter2-hunter2", "line 6", []string{"of 15 characters", "$argon2id$", "counterpour house passcode --role floor --name Cy"}},
		{"a token as it is", good + "floor cy-script token-sha256:cpt_hunter2", "line 6", []string{"64 hexadecimal digits", "counterpour house token --role floor --name cy-script"}},
		{"a token in capitals", good + "floor cy-script " + strings.ToUpper(sum), "line 6", []string{"--name cy-script"}},
		{"not text", good + "floor \xff\xfe " + boHash(), "line 6", []string{"is no name"}},
		{"too long", strings.Repeat("# note\n", 10000), "", []string{"64 KiB"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Parse(c.text)
			var faults flavor.DataFaults
			require.ErrorAs(t, err, &faults)
			require.Len(t, faults, 1)
			assert.ErrorIs(t, err, flavor.ErrInvalid)
			assert.Equal(t, c.location, faults[0].Location)
			for _, want := range c.want {
				assert.Contains(t, err.Error(), want)
			}
			assert.NotContains(t, err.Error(), "hunter2", "what may be a passcode is not repeated")
			assert.NotContains(t, faults[0].Value, "hunter2")
		})
	}
	_, err := Parse("owner Ana " + anaHash() + "\nlead Bo\n")
	var faults flavor.DataFaults
	require.ErrorAs(t, err, &faults)
	assert.Len(t, faults, 2, "all faults of the lines, and not that there is no lead as well")
}

func TestReadFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "passcodes")
	require.NoError(t, os.WriteFile(path, []byte(bookText()), 0o600))
	b, err := ReadFile(path)
	require.NoError(t, err)
	assert.Len(t, b.people, 2)

	_, err = ReadFile(filepath.Dir(path))
	assert.ErrorContains(t, err, "name the file")
	_, err = ReadFile(path + "-not")
	assert.ErrorIs(t, err, os.ErrNotExist)

	require.NoError(t, os.WriteFile(path, []byte(bookText()+"floor Cy\n"), 0o600))
	_, err = ReadFile(path)
	assert.ErrorContains(t, err, path+", line 6: ")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	_, err = ReadFile(path)
	assert.ErrorContains(t, err, path+": nobody in it is a lead")
	require.NoError(t, os.WriteFile(path, make([]byte, 1<<20), 0o600))
	_, err = ReadFile(path)
	assert.ErrorContains(t, err, "64 KiB")
}

func TestReadFileRefusesOpenPermissions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the modes of files say nothing here")
	}
	path := filepath.Join(t.TempDir(), "passcodes")
	require.NoError(t, os.WriteFile(path, []byte(bookText()), 0o600))
	for mode, ok := range map[os.FileMode]bool{0o400: true, 0o600: true, 0o700: true, 0o640: false, 0o604: false, 0o644: false, 0o620: false, 0o601: false} {
		require.NoError(t, os.Chmod(path, mode))
		_, err := ReadFile(path)
		if ok {
			assert.NoError(t, err, "%#o", mode)
			continue
		}
		assert.ErrorIs(t, err, flavor.ErrInvalid, "%#o", mode)
		assert.ErrorContains(t, err, fmt.Sprintf("mode %#o", mode))
		assert.ErrorContains(t, err, "chmod 600 "+path)
	}
}

func TestLine(t *testing.T) {
	line, err := Line(Lead, "Ana", anaHash())
	require.NoError(t, err)
	_, err = Parse(line)
	require.NoError(t, err)
	_, err = Line(0, "Ana", anaHash())
	assert.ErrorContains(t, err, "lead or floor")
	_, err = Line(Lead, "A na", anaHash())
	assert.ErrorContains(t, err, `"A na" is no name`)
}

func TestNames(t *testing.T) {
	for _, c := range []struct{ name, key string }{
		{"Ana", "ana"}, {"ANA", "ana"}, {"Zoë", "zoë"}, {"Zoe\u0308", "zoë"}, {"O'Neil", "o'neil"}, {"J.P", "j.p"}, {"till_2", "till_2"}, {"Øyvind", "øyvind"}, {"Ａｎａ", "ana"}, {"安娜", "安娜"},
	} {
		key, err := nameKey(c.name)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.key, key)
	}
	for _, name := range []string{"", " ", "a b", "#ana", "-", "42", "a$b", "a\x00b", "a\u200bb", "a\u202eb", strings.Repeat("a", 1<<20)} {
		_, err := nameKey(name)
		require.Error(t, err, "%.20q", name)
		assert.Less(t, len(err.Error()), 300)
	}
}

var aPlace = regexp.MustCompile(`^(line [1-9][0-9]*)?$`)

// A roster that is read has a lead, and a line each for names that differ; one that
// is not has faults with places.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{bookText(), "", "lead", "lead Ana hunter22", "floor Bo token-sha256:00\n", "\ufeff# x\r\nlead A #", "lead \xff $argon2id$v=19$m=1,t=1,p=1$$",
		"lead Ana " + anaHash() + "\nlead ana " + anaHash(), "lead a token-sha256:" + strings.Repeat("0", 64)} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		b, err := Parse(text)
		var faults flavor.DataFaults
		if errors.As(err, &faults) {
			for _, fault := range faults {
				if !aPlace.MatchString(fault.Location) || fault.Message == "" || len(fault.Value) > 4*mostName {
					t.Errorf("%q: %#v", text, fault)
				}
			}
			return
		}
		if err != nil {
			t.Fatalf("%q: %v is no fault", text, err)
		}
		lead, names := false, map[string]bool{}
		all := make([]Person, 0, len(b.people)+len(b.bearers))
		for _, k := range b.people {
			all = append(all, k.Person)
		}
		for _, k := range b.bearers {
			all = append(all, k.Person)
		}
		for _, p := range all {
			key, err := nameKey(p.Name)
			if err != nil || names[key] || !p.Role.May(Floor) {
				t.Errorf("%q: %+v, %v", text, p, err)
			}
			names[key] = true
			lead = lead || p.Role == Lead
		}
		if !lead || len(b.byName) != len(b.people) {
			t.Errorf("%q: no lead, or names that are not found", text)
		}
	})
}
