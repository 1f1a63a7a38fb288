package custody

import (
	"errors"
	"fmt"
	"slices"
	"time"
)

// Party is in whose name somebody approves.
type Party string

// The parties.
const (
	Operator   Party = "operator"   // the rink's
	Contractor Party = "contractor" // who cuts the glass
	League     Party = "league"
)

// Parties lists the parties.
func Parties() []Party { return []Party{Operator, Contractor, League} }

// Approver is a person of the desk who answers for a party.
type Approver struct {
	Party Party  `json:"party"`
	Name  string `json:"name"`
}

// Put puts a version to approvers. What was put before is answered no more.
type Put struct {
	Version  int        `json:"version"`
	Revision string     `json:"revision"` // SHA-256 of the document, hexadecimal
	To       []Approver `json:"to"`
}

// Answered is an approver's answer; it counts when it comes from somebody it was put to.
type Answered struct {
	Revision string `json:"revision"`
	Party    Party  `json:"party"`
	Accepted bool   `json:"accepted"`
	Remark   string `json:"remark,omitempty"`
}

func (Put) kind() string      { return "put" }
func (Answered) kind() string { return "answer" }

const maxApprovers = 20

func (f Put) check() error {
	if len(f.To) == 0 || len(f.To) > maxApprovers {
		return fmt.Errorf("%d approvers: name 1 to %d", len(f.To), maxApprovers)
	}
	err := errors.Join(checkRevision(f.Revision))
	for _, a := range f.To {
		err = errors.Join(err, oneOf("party", a.Party, Parties()), name("approver", a.Name))
	}
	return err
}

func (f Answered) check() error {
	err := errors.Join(checkRevision(f.Revision), oneOf("party", f.Party, Parties()), text("remark", f.Remark, MaxWords))
	if !f.Accepted && f.Remark == "" {
		return errors.Join(err, errors.New("a refusal needs a remark that says why"))
	}
	return err
}

func checkRevision(r string) error {
	if len(r) != photoKey { // both are a SHA-256
		return fmt.Errorf("revision %.20q: give the document's SHA-256", r)
	}
	return nil
}

// Reply is one approver's answer to what was put.
type Reply struct {
	Approver
	At       time.Time // zero while there is no answer
	Accepted bool
	Remark   string
}

// Standing is how far an approval is.
type Standing string

// The standings of a revision.
const (
	NoRecord Standing = "no-record" // nobody was asked
	Waiting  Standing = "waiting"
	Approved Standing = "approved" // by all who were asked
	Refused  Standing = "refused"  // by one at least
)

// Approval is what became of a revision that was put to approvers. Its zero value has no record.
type Approval struct {
	Standing Standing // "" is NoRecord
	Version  int
	Revision string
	Asked    time.Time
	Replies  []Reply
	// Earlier is the newest other version that was approved, beside one that is not:
	// what changed is told against that one. Nil when there is none.
	Earlier *Approval
}

// On returns when the last needed answer came; zero unless approved.
func (a Approval) On() (at time.Time) {
	for _, r := range a.Replies {
		if a.Standing == Approved && r.At.After(at) {
			at = r.At
		}
	}
	return at
}

// ApprovalOf returns what became of a revision.
func ApprovalOf(h History, revision string) (of Approval) {
	var earlier *Approval
	for _, a := range approvals(h) {
		switch {
		case a.Revision == revision:
			of = a
		case a.Standing == Approved:
			earlier = &a
		}
	}
	if of.Standing != Approved {
		of.Earlier = earlier
	}
	return of
}

// approvals lists what was put, each revision once, by when it was put last.
func approvals(h History) []Approval {
	var out []Approval
	for _, e := range h {
		switch f := e.Fact.(type) {
		case Put:
			a := Approval{Standing: Waiting, Version: f.Version, Revision: f.Revision, Asked: e.When}
			for _, to := range f.To {
				a.Replies = append(a.Replies, Reply{Approver: to})
			}
			out = append(slices.DeleteFunc(out, func(b Approval) bool { return b.Revision == f.Revision }), a)
		case Answered:
			for i := range out {
				if out[i].Revision == f.Revision {
					out[i].answer(e, f)
				}
			}
		}
	}
	return out
}

func (a *Approval) answer(e Entry, f Answered) {
	yes, no := 0, 0
	for i := range a.Replies {
		r := &a.Replies[i]
		if r.Approver == (Approver{f.Party, e.Who}) {
			r.At, r.Accepted, r.Remark = e.When, f.Accepted, f.Remark
		}
		if r.Accepted {
			yes++
		} else if !r.At.IsZero() {
			no++
		}
	}
	switch {
	case no > 0:
		a.Standing = Refused
	case yes == len(a.Replies):
		a.Standing = Approved
	default:
		a.Standing = Waiting
	}
}
