package store

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"counterpour/data/house"

	"github.com/stretchr/testify/require"
)

const childEnv = "COUNTERPOUR_HOUSE_CHILD"

// child writes until it is killed. Each write counts two records up together,
// and is acknowledged on stdout once it is done.
func child(path string) int {
	ctx := context.Background()
	s, err := Open(ctx, path, Options{})
	if err != nil {
		fmt.Println("failed", err)
		return 1
	}
	a, b, err := pair(ctx, s)
	for err == nil {
		a.Item.Stock++
		b.Item.Note = strconv.Itoa(int(a.Item.Stock))
		var done []house.Change
		if done, err = s.Write(ctx, who, house.Put(a.Item, a.Version), house.Put(b.Item, b.Version)); err == nil {
			a.Version, b.Version = done[0].Version, done[1].Version
			fmt.Println("kept", b.Item.Note)
		}
	}
	fmt.Println("failed", err)
	return 1
}

func pair(ctx context.Context, s house.Store) (a house.Kept[house.Bottle], b house.Kept[house.Spec], err error) {
	if a, err = house.Get[house.Bottle](ctx, s, gin().ID); err == nil {
		b, err = house.Get[house.Spec](ctx, s, sour().ID)
	}
	return a, b, err
}

func TestKilledDuringWrites(t *testing.T) {
	t.Parallel() // it waits more than it works
	rounds := 80 // each falls at another moment of the first few writes
	if testing.Short() {
		rounds = 15
	}
	path := filepath.Join(t.TempDir(), "house.db")
	s := openAt(t, path, Options{})
	a, b := gin(), sour()
	a.Stock, b.Note = 0, "0"
	write(t, s, house.Put(a, 0), house.Put(b, 0))
	require.NoError(t, s.Close())
	random := rand.New(rand.NewPCG(1, 2))
	acknowledged, first := 0, time.Now()
	for round := range rounds {
		acknowledged = max(acknowledged, killOne(t, path, random))
		_, err := Verify(t.Context(), path)
		require.NoError(t, err, "a house that was cut off is sound before it is opened, round %d", round)
		s, err := Open(t.Context(), path, Options{})
		require.NoError(t, err)
		x, y, err := pair(t.Context(), s)
		require.NoError(t, err)
		require.Equal(t, strconv.Itoa(int(x.Item.Stock)), y.Item.Note, "half a write, round %d", round)
		require.GreaterOrEqual(t, int(x.Item.Stock), acknowledged, "an acknowledged write is lost, round %d", round)
		require.LessOrEqual(t, int(x.Item.Stock), acknowledged+1, "a write that nobody asked for")
		require.NoError(t, s.Check(t.Context()), "round %d", round)
		acknowledged = int(x.Item.Stock)
		require.NoError(t, s.Close())
	}
	require.Greater(t, acknowledged, rounds, "the child got to write")
	t.Logf("%d kills, %d writes, %v", rounds, acknowledged, time.Since(first).Round(time.Millisecond))
}

// killOne starts a child, kills it a moment after its first write, and returns
// the last write that it acknowledged.
func killOne(t *testing.T, path string, random *rand.Rand) (last int) {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childEnv+"="+path)
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	require.NoError(t, cmd.Start())
	lines := bufio.NewScanner(out)
	for n := 0; lines.Scan(); n++ {
		word, value, _ := strings.Cut(lines.Text(), " ")
		require.Equal(t, "kept", word, "%s", lines.Text())
		v, err := strconv.Atoi(value)
		require.NoError(t, err)
		last = v
		if n == 0 {
			time.AfterFunc(time.Duration(random.IntN(int(12*time.Millisecond))), func() { _ = cmd.Process.Kill() })
		}
	}
	require.Error(t, cmd.Wait(), "it was killed")
	require.NotZero(t, last, stderr.String())
	return last
}
