package custody

import "slices"

// Ledger is an arena's events as a keeper gives them, with their history, for who reads
// on as events come. The zero value is empty. A copy stays as it is while the ledger
// takes more.
type Ledger struct {
	Events    []Event // by Seq, each once
	History   History
	corrected map[ID]bool // that a correction names
}

// Seq returns the place of the last event in its stream, 0 for none.
func (l Ledger) Seq() int64 {
	if len(l.Events) == 0 {
		return 0
	}
	return l.Events[len(l.Events)-1].Seq
}

// Add takes what came since. Plain events go into their place, at the end nearly always;
// only where one corrects another is the whole history put in order anew.
func (l *Ledger) Add(came []Event) {
	l.Events = append(l.Events, came...)
	if l.corrected == nil {
		l.corrected = map[ID]bool{}
	}
	anew := false
	for _, e := range came {
		if e.Corrects != "" {
			l.corrected[e.Corrects] = true
		}
		anew = anew || e.Corrects != "" || l.corrected[e.ID]
	}
	if anew {
		l.History = HistoryOf(l.Events)
		return
	}
	fresh := HistoryOf(came)
	if len(fresh) == 0 {
		return
	}
	i, _ := slices.BinarySearchFunc(l.History, fresh[0], inOrder)
	if i == len(l.History) {
		l.History = append(l.History, fresh...)
		return
	}
	late := slices.Concat(l.History[i:], fresh)
	slices.SortFunc(late, inOrder)
	l.History = slices.Concat(l.History[:i], late)
}
