package shell

import "net/http"

// closePage asks whether the desk shall be closed, or says that it is.
type closePage struct {
	Frame
	Closed bool
}

// askClose answers GET /close.
func (s *Shell) askClose(w http.ResponseWriter, r *http.Request) error {
	if s.Close == nil {
		return ErrNowhere
	}
	return s.Page(w, r, http.StatusOK, "close.tmpl", closePage{Frame: s.Frame(r, "Close the desk")})
}

// close answers POST /close: the page that says so is sent before the desk ends, which
// lets requests under way finish.
func (s *Shell) close(w http.ResponseWriter, r *http.Request) error {
	if s.Close == nil {
		return ErrNowhere
	}
	if err := s.Page(w, r, http.StatusOK, "close.tmpl", closePage{Frame: s.Frame(r, "The desk is closed"), Closed: true}); err != nil {
		return err
	}
	s.Log.InfoContext(r.Context(), "desk", "closed", "from its page")
	s.Close()
	return nil
}
