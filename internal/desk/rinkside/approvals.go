package rinkside

import (
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/tell/words"
)

// approvalsPage is who allowed the newest version, and who is still asked.
type approvalsPage struct {
	servicePage
	Version  int
	Approval custody.Approval
	Words    string
	Mine     []custody.Reply // those that the visitor may give, or give anew
	Before   custody.Approval
	Diff     []shell.DiffLine // since the approved one
	Beside   string           // both plans side by side
	Parties  []custody.Party
	People   []people.Person // who may be asked by name
}

func (d area) approvalsPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "approvals")
	if err != nil {
		return err
	}
	page := approvalsPage{servicePage: base, Version: base.book.Version.Number, Parties: custody.Parties()}
	page.Approval = custody.ApprovalOf(base.record.History, base.book.Revision)
	if e := page.Approval.Earlier; e != nil {
		page.Before = *e
	}
	page.Words = words.ApprovalLine(page.Approval)
	for _, reply := range page.Approval.Replies {
		if reply.Name == door.Who(r.Context()) {
			page.Mine = append(page.Mine, reply)
		}
	}
	if page.People, err = d.Door.Register.People(r.Context()); err != nil {
		return err
	}
	if page.Before.Version > 0 {
		old, err := d.Shelf.Keeper().Version(r.Context(), base.Address.Slug, page.Before.Version)
		if err != nil {
			return err
		}
		if page.Diff, err = shell.DiffLines(r.Context(), old.Text, base.book.Version.Text); err != nil {
			return err
		}
		at := func(version int) string { return base.Address.Slug + "@" + strconv.Itoa(version) }
		page.Beside = base.Address.Beside("/compare", "left", at(page.Before.Version), "right", at(page.Version))
	}
	return d.Page(w, r, http.StatusOK, "approvals.tmpl", page)
}

// putToApprovers answers POST /arena/{slug}/approvals: asks people for the newest version.
func (d area) putToApprovers(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "approvals")
	if err != nil {
		return err
	}
	put := custody.Put{Version: base.book.Version.Number, Revision: base.book.Revision}
	for _, party := range custody.Parties() {
		if name := people.Tidy(r.PostFormValue("name-" + string(party))); name != "" {
			put.To = append(put.To, custody.Approver{Party: party, Name: name})
		}
	}
	if len(put.To) == 0 {
		return shell.Refuse(http.StatusUnprocessableEntity, "Nobody is asked.", "Name at least one who answers for the operator, the contractor or the league.")
	}
	if r.PostFormValue("version") != strconv.Itoa(put.Version) {
		return shell.Refuse(http.StatusConflict, "Somebody saved a newer version meanwhile.", "Look at it, then put that one to the approvers.")
	}
	if err := d.tell(r, said{custody.ID(r.PostFormValue("id")), put}); err != nil {
		return err
	}
	return d.Goto(w, r, base.Address.Beside("/approvals"))
}

// answerApproval answers POST /arena/{slug}/approvals/answer: what somebody who was
// asked says. Who was not asked is refused here, and would not count.
func (d area) answerApproval(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "approvals")
	if err != nil {
		return err
	}
	f := custody.Answered{Revision: r.PostFormValue("revision"), Party: custody.Party(r.PostFormValue("party")), Accepted: r.PostFormValue("accept") == "yes", Remark: r.PostFormValue("remark")}
	of := custody.ApprovalOf(base.record.History, f.Revision)
	asked := false
	for _, reply := range of.Replies {
		asked = asked || reply.Approver == custody.Approver{Party: f.Party, Name: door.Who(r.Context())}
	}
	if !asked {
		return shell.Refuse(http.StatusForbidden, "This was not put to you.", "Only those who were named answer: a planner names them.")
	}
	if !f.Accepted && f.Remark == "" {
		return shell.Refuse(http.StatusUnprocessableEntity, "A refusal needs a remark.", "Say in a few words why, so that it can be put right.")
	}
	if err := d.tell(r, said{custody.ID(r.PostFormValue("id")), f}); err != nil {
		return err
	}
	return d.Goto(w, r, base.Address.Beside("/approvals"))
}
