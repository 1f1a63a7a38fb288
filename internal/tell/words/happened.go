package words

import (
	"fmt"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

// Happened says what an event tells, in one line.
func Happened(f custody.Fact) string {
	switch f := f.(type) {
	case custody.Issued:
		return fmt.Sprintf("cover %s labelled for hole %s", f.Cover, f.Hole)
	case custody.Moved:
		return remarked(fmt.Sprintf("cover %s %s", f.Cover, f.State), f.Words)
	case custody.Retired:
		return fmt.Sprintf("cover %s used no more", f.Cover)
	case custody.Began:
		return fmt.Sprintf("%s began", f.Phase)
	case custody.Seated:
		if f.By == "" {
			return fmt.Sprintf("hole %s: nobody seated", f.Hole)
		}
		return fmt.Sprintf("hole %s: %s seated", f.Hole, f.By)
	case custody.Stocked:
		return fmt.Sprintf("hole %s: %d spare panes", f.Hole, f.Panes)
	case custody.Replaced:
		return fmt.Sprintf("hole %s: pane %s changed", f.Hole, f.Pane)
	case custody.Incident:
		return remarked(fmt.Sprintf("hole %s: %s", f.Hole, strings.ReplaceAll(string(f.What), "-", " ")), f.Words)
	case custody.Withdrawn:
		return "never happened"
	case custody.LinkMade:
		return fmt.Sprintf("day link for %s, %s", f.Name, f.Day)
	case custody.LinkRevoked:
		return fmt.Sprintf("day link %s revoked", f.Link)
	case custody.Inspected:
		return remarked(fmt.Sprintf("hole %s inspected: %s", f.Hole, f.Verdict), f.Words)
	case custody.Put:
		return fmt.Sprintf("version %d put to %s", f.Version, approvers(f.To))
	case custody.Answered:
		if f.Accepted {
			return remarked(fmt.Sprintf("accepted for the %s", f.Party), f.Remark)
		}
		return remarked(fmt.Sprintf("refused for the %s", f.Party), f.Remark)
	}
	return ""
}

func remarked(said, remark string) string {
	if remark == "" {
		return said
	}
	return said + ": " + strings.Join(strings.Fields(remark), " ")
}

func approvers(all []custody.Approver) string {
	names := make([]string, len(all))
	for i, a := range all {
		names[i] = fmt.Sprintf("%s (%s)", a.Name, a.Party)
	}
	return strings.Join(names, ", ")
}

// ApprovalSentence says the same in a sentence.
func ApprovalSentence(a custody.Approval) string {
	line := ApprovalLine(a)
	return strings.ToUpper(line[:1]) + line[1:] + "."
}

// ApprovalLine says in one line what became of a revision: "approved by Hedda Quist
// (operator) on 2026-06-14", "not approved: waiting for ...", "not approved: no record;
// version 3 was approved on 2026-06-14".
func ApprovalLine(a custody.Approval) string {
	line := standing(a)
	if e := a.Earlier; e != nil {
		line += fmt.Sprintf("; version %d was approved on %s", e.Version, e.On().Format(time.DateOnly))
	}
	return line
}

func standing(a custody.Approval) string {
	var yes, no, open []string
	for _, r := range a.Replies {
		name := fmt.Sprintf("%s (%s)", r.Name, r.Party)
		switch {
		case r.At.IsZero():
			open = append(open, name)
		case r.Accepted:
			yes = append(yes, name)
		default:
			no = append(no, remarked("refused by "+name+" on "+r.At.Format(time.DateOnly), r.Remark))
		}
	}
	switch a.Standing {
	case custody.Approved:
		return "approved by " + strings.Join(yes, ", ") + " on " + a.On().Format(time.DateOnly)
	case custody.Refused:
		return "not approved: " + strings.Join(no, "; ")
	case custody.Waiting:
		return "not approved: waiting for " + strings.Join(open, ", ")
	}
	return "not approved: no record"
}
