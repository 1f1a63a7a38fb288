package results

import (
	"bytes"
	"net/http"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/wire"
)

// paper answers GET /arena/{slug}/frames.pdf: the command's report.
func (d area) paper(w http.ResponseWriter, r *http.Request) error {
	p, err := d.askedFor(r)
	if err != nil {
		return err
	}
	report := p.report()
	report.Creator = d.Creator
	if report.Paper, err = sheet.ParsePaper(sheet.UsualPaper(p.Units())); err != nil {
		return err
	}
	data, err := report.PDF(r.Context())
	if err == nil {
		shell.Send(w, r, http.StatusOK, "application/pdf", data, nil)
	}
	return err
}

// tables answers GET /arena/{slug}/frames.csv: the command's tables, one after another.
func (d area) tables(w http.ResponseWriter, r *http.Request) error {
	p, err := d.askedFor(r)
	if err != nil {
		return err
	}
	all, err := wire.Tables(wire.Recap(p.Recap.Answer))
	if err != nil {
		return err
	}
	var text bytes.Buffer
	for i, t := range all {
		if i > 0 {
			text.WriteByte('\n')
		}
		if err := t.CSV(&text); err != nil {
			return err
		}
	}
	shell.SendFile(w, r, "text/csv; charset=utf-8", "frames-"+p.Game.ID+".csv", text.Bytes())
	return nil
}

// readings answers GET /arena/{slug}/frames/readings.csv: what is kept.
func (d area) readings(w http.ResponseWriter, r *http.Request) error {
	p, err := d.open(r)
	if err != nil {
		return err
	}
	if p.Frames.Version.Number == 0 {
		return shell.ErrNowhere
	}
	shell.SendFile(w, r, "text/csv; charset=utf-8", "readings-"+p.Game.ID+".csv", []byte(p.Frames.Version.Text))
	return nil
}

// learnt answers GET /arena/{slug}/frames/learnt.yaml: what choose --play takes.
func (d area) learnt(w http.ResponseWriter, r *http.Request) error {
	p, err := d.askedFor(r)
	if err == nil && p.Recap.Learnt.Bursts == 0 {
		err = shell.Refuse(http.StatusUnprocessableEntity, "Nothing is learnt from these frames.", "None is matched to a hole that somebody worked: say whose bodies are whose.")
	}
	if err != nil {
		return err
	}
	shell.SendFile(w, r, "application/yaml", "learnt-"+p.Game.ID+".yaml", p.Recap.Learnt.YAML())
	return nil
}
