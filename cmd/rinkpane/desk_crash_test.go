package main

import (
	"bufio"
	"database/sql"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	_ "modernc.org/sqlite" // to ask the file itself whether it is sound

	"example.org/rinkpane/internal/keep/store"
)

// deskProcess is a real desk with its address.
type deskProcess struct {
	cmd     *exec.Cmd
	url     string
	metrics string // "" unless asked for
}

// startDesk runs the program as a user does and reads where the desk is open.
func startDesk(t *testing.T, flags ...string) deskProcess {
	t.Helper()
	c := exec.Command("rinkpane", append([]string{"desk", "--addr", "127.0.0.1:0", "--json"}, flags...)...)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = c.Process.Kill() // it may have ended already
		_ = c.Wait()
	})
	var said struct{ URL, Metrics string }
	line, err := bufio.NewReader(out).ReadBytes('\n')
	if err != nil || json.Unmarshal(line, &said) != nil {
		t.Fatalf("the desk said %q, %v", line, err)
	}
	return deskProcess{c, said.URL, said.Metrics}
}

// savedVersion is what the desk acknowledges.
type savedVersion struct {
	Version struct{ Number int }
	Mark    string
}

const crashArena = "api/arenas/sorrel-flats"

// save saves a version on top of base.
func (d deskProcess) save(base int) (savedVersion, error) {
	body := fmt.Sprintf(`{"base": %d, "edits": [{"do": "set", "path": "note", "value": "save on top of %d"}]}`, base, base)
	answer, err := http.Post(d.url+crashArena+"/edits", "application/json", strings.NewReader(body))
	if err != nil {
		return savedVersion{}, err
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		return savedVersion{}, err
	}
	var s savedVersion
	if answer.StatusCode != http.StatusOK {
		return s, fmt.Errorf("status %d: %s", answer.StatusCode, data)
	}
	return s, json.Unmarshal(data, &s)
}

// get reads an answer's JSON.
func get[T any](t *testing.T, url string) T {
	t.Helper()
	var out T
	answer, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if answer.StatusCode != http.StatusOK {
		t.Fatalf("GET %s: %d", url, answer.StatusCode)
	}
	if err := json.NewDecoder(answer.Body).Decode(&out); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestDeskKilledInMidSave kills the desk without warning while it saves, again
// and again: every save that it acknowledged is there after the restart, and the
// file is sound.
func TestDeskKilledInMidSave(t *testing.T) {
	const rounds, before = 5, 3 // saves of a round before its clock starts: slow machines save few
	folder := t.TempDir()
	marks := map[int]string{}
	for round := range rounds {
		d := startDesk(t, "--data", folder)
		head := get[struct{ Head int }](t, d.url+crashArena).Head
		for n, mark := range marks {
			if n > head {
				t.Fatalf("round %d: acknowledged version %d is lost, the newest is %d", round, n, head)
			}
			if got := get[savedVersionText](t, fmt.Sprintf("%s%s/versions/%d", d.url, crashArena, n)); got.Mark != mark {
				t.Fatalf("round %d: version %d is another than was acknowledged", round, n)
			}
		}
		for n := 1; ; n++ {
			s, err := d.save(head)
			if err != nil && n > before {
				break // killed
			}
			if err != nil {
				t.Fatalf("round %d: %v", round, err)
			}
			if n == before {
				time.AfterFunc(time.Duration(60+47*round)*time.Millisecond, func() { _ = d.cmd.Process.Kill() })
			}
			head = s.Version.Number
			marks[head] = s.Mark
		}
		_ = d.cmd.Wait() // the error is the kill itself
		fileIsSound(t, folder)
	}
	if len(marks) < rounds*before {
		t.Fatalf("only %d saves in all rounds: the test proves nothing", len(marks))
	}
}

type savedVersionText struct{ Mark, Text string }

func fileIsSound(t *testing.T, folder string) {
	t.Helper()
	db, err := sql.Open("sqlite", filepath.Join(folder, store.FileName))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var says string
	if err := db.QueryRow("PRAGMA integrity_check").Scan(&says); err != nil || says != "ok" {
		t.Fatalf("integrity_check: %q, %v", says, err)
	}
}

// TestHalfSentRequestSavesNothing cuts connections in the middle of a save and
// of an upload: nothing is saved, and the desk answers on.
func TestHalfSentRequestSavesNothing(t *testing.T) {
	d := startDesk(t, "--data", t.TempDir())
	host := strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/")
	for _, half := range []string{
		"POST /" + crashArena + "/edits HTTP/1.1\r\nHost: " + host + "\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n" +
			`{"base": 1, "edits": [{"do": "set", "path": "note", "value": "half`,
		"POST /import HTTP/1.1\r\nHost: " + host + "\r\nContent-Type: multipart/form-data; boundary=b\r\nContent-Length: 9000\r\n\r\n" +
			"--b\r\nContent-Disposition: form-data; name=\"text\"\r\n\r\nrinkpane: arena 1\nname: Half\n",
		"POST /" + crashArena + "/text HTTP/1.1\r\nHost: " + host + "\r\nTransfer-Encoding: chunked\r\n\r\n400\r\nrinkpane",
	} {
		c, err := net.Dial("tcp", host)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(c, half); err != nil {
			t.Error(err)
		}
		c.Close()
	}
	if s, err := d.save(1); err != nil || s.Version.Number != 2 {
		t.Errorf("after half requests: %+v, %v", s, err)
	}
	if all := get[struct{ Arenas []any }](t, d.url+"api/arenas?away=true"); len(all.Arenas) != 3 {
		t.Errorf("%d arenas after a half upload", len(all.Arenas))
	}
}
