package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"time"
)

// server is the program under test.
type server struct {
	program, house string
	address        string // the same for all runs
	base           string
	cmd            *exec.Cmd
	log            *os.File
}

// stopTime is the longest time that a shutdown may take.
const stopTime = time.Minute

// start starts the program and returns once it answers.
func (s *server) start(ctx context.Context) error {
	if s.address == "" {
		if err := s.choose(); err != nil {
			return err
		}
	}
	out, err := s.prepare(ctx)
	if err == nil {
		err = s.cmd.Start()
	}
	if err != nil {
		return err
	}
	if line, err := bufio.NewReader(out).ReadString('\n'); err != nil {
		s.kill()
		ended := s.cmd.Wait()
		return fmt.Errorf("it did not serve, and said %q: %s: %w", line, s.said(), errors.Join(err, ended, s.forget()))
	}
	return nil
}

// choose finds a free address.
func (s *server) choose() error {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	s.address = l.Addr().String()
	s.base = "http://" + s.address
	return l.Close()
}

// prepare creates the command and returns a reader of its output.
func (s *server) prepare(ctx context.Context) (out io.Reader, err error) {
	if s.log, err = os.CreateTemp("", "counterbench-log"); err != nil {
		return nil, err
	}
	s.cmd = exec.CommandContext(ctx, s.program, "serve", "--listen", s.address, "--house", s.house)
	s.cmd.Stderr = s.log
	return s.cmd.StdoutPipe()
}

// stop sends the signal of a service manager and waits for the program to end.
func (s *server) stop() (time.Duration, error) {
	begun := time.Now()
	if err := s.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		return 0, err
	}
	ended := make(chan error, 1)
	go func() { ended <- s.cmd.Wait() }()
	select {
	case err := <-ended:
		if err != nil {
			return 0, fmt.Errorf("%w: %s", err, s.said())
		}
		return time.Since(begun), s.forget()
	case <-time.After(stopTime):
		return 0, fmt.Errorf("it did not stop within %v", stopTime)
	}
}

func (s *server) kill() { _ = s.cmd.Process.Kill() } // it has usually ended already

// end kills the program if it still runs, and removes its log.
func (s *server) end() {
	s.kill()
	_ = s.cmd.Wait() // its error is that of the signal
	_ = s.forget()   // a log left in the temporary folder does no harm
}

// forget closes and removes the log, if there is one.
func (s *server) forget() error {
	if s.log == nil {
		return nil
	}
	log := s.log
	s.log = nil
	return errors.Join(log.Close(), os.Remove(log.Name()))
}

// said returns the end of the program's log.
func (s *server) said() string {
	text, err := os.ReadFile(s.log.Name())
	if err != nil {
		return err.Error()
	}
	return string(text[max(0, len(text)-2000):])
}

// The house of the test: common practice, no source.
const (
	stockText = "name,ingredient,size_ml,stock\nGin,London dry gin,700,6\nRum,white rum,700,6\nTequila,blanco tequila,700,6\nRye,rye whiskey,700,6\nBrandy,cognac,700,6\n" +
		"Orange,triple sec,700,6\nRed,sweet vermouth,700,6\nWhite,dry vermouth,700,6\nBitter,red bitter aperitif,700,6\nDrops,aromatic bitters,700,6\n" +
		"Lemon,lemon juice,700,6\nLime,lime juice,700,6\nSyrup,simple syrup,700,6\nHoney,honey syrup,700,6\nGrenadine,grenadine,700,6\nFalernum,falernum,700,6\nSoda,soda water,700,6\n"
	specsText = "Draft A\n2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up\n\n" +
		"Draft B\n2 oz white rum\n3/4 oz lime juice\n1/2 oz falernum\n1/4 oz simple syrup\nshake, up\n\n" +
		"Draft C\n2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up\n\n" +
		"Draft D\n2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up\n"
)

// stock fills the house.
func (p *plan) stock(ctx context.Context) error {
	for _, part := range []struct{ form, text string }{{"stock", stockText}, {"text", specsText}} {
		f, err := os.CreateTemp("", "counterbench")
		if err != nil {
			return err
		}
		defer os.Remove(f.Name())
		if _, err := f.WriteString(part.text); err != nil {
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
		out, err := exec.CommandContext(ctx, p.program, "house", "import", "--house", p.house, "--as", part.form, f.Name()).CombinedOutput()
		if err != nil {
			return fmt.Errorf("filling the house: %w: %s", err, out)
		}
	}
	return nil
}

// lost checks the house and returns how many acknowledged scores are missing from it.
func (p *plan) lost(acknowledged []float64) (lost, err error) {
	if out, err := exec.Command(p.program, "house", "check", "--house", p.house).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("checking the house: %w: %s", err, out)
	}
	out, err := exec.Command(p.program, "house", "export", "--house", p.house, "--as", "json").Output()
	if err != nil {
		return nil, fmt.Errorf("reading the house: %w", err)
	}
	var document struct {
		Records []struct {
			Kind   string
			Record struct{ Score *float64 }
		}
	}
	if err := json.NewDecoder(bytes.NewReader(out)).Decode(&document); err != nil {
		return nil, err
	}
	kept := map[float64]bool{}
	for _, r := range document.Records {
		if r.Kind == "cover" && r.Record.Score != nil {
			kept[*r.Record.Score] = true
		}
	}
	var missing []string
	for _, score := range acknowledged {
		if !kept[score] {
			missing = append(missing, fmt.Sprint(score))
		}
	}
	fmt.Printf("acknowledged writes: %d, of which lost: %d\n", len(acknowledged), len(missing))
	if len(missing) > 0 {
		lost = errors.New("lost: " + strings.Join(missing[:min(len(missing), 20)], ", "))
	}
	return lost, nil
}
