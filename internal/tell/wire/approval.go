package wire

import (
	"cmp"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

// Approval is what became of a plan's revision.
type Approval struct {
	Standing custody.Standing `json:"standing"` // "no-record", "waiting", "approved" or "refused"
	On       *string          `json:"on"`       // the day of the last answer that was needed; null unless approved
	Replies  []Reply          `json:"replies"`  // of all who were asked
	// Earlier is the newest other version that was approved, beside one that is not.
	Earlier *int `json:"earlier"`
}

// Reply is what one who was asked said.
type Reply struct {
	Party    custody.Party `json:"party"` // "operator", "contractor" or "league"
	Name     string        `json:"name"`
	On       *string       `json:"on"` // null while there is no answer
	Accepted bool          `json:"accepted"`
	Remark   string        `json:"remark"`
}

// ApprovalOf encodes an approval.
func ApprovalOf(a custody.Approval) Approval {
	out := Approval{Standing: cmp.Or(a.Standing, custody.NoRecord), On: date(a.On()), Replies: Each(a.Replies, func(r custody.Reply) Reply {
		return Reply{r.Party, r.Name, date(r.At), r.Accepted, r.Remark}
	})}
	if a.Earlier != nil {
		out.Earlier = &a.Earlier.Version
	}
	return out
}

// date is a day as RFC 3339 has it, null for none.
func date(t time.Time) *string {
	if t.IsZero() {
		return nil
	}
	day := t.Format(time.DateOnly)
	return &day
}
