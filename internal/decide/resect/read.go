package resect

import (
	"fmt"
	"io"
	"slices"

	"example.org/rinkpane/internal/measure/form"
)

// maxMarksBytes is far above any file of marks.
const maxMarksBytes = 1 << 20

// ReadPins reads marks, a line each, by the frame that they were made in:
//
//	landmark,x_px,y_px,frame
//	B:post-bench:foot,2736.0,2689.2,first.jpg
//
// The column frame may be left out where all marks are of one. Frames come in the order
// in which they are first named, without pixels and sensor.
func ReadPins(file string, r io.Reader) ([]Frame, error) {
	t, err := form.ReadTable(file, r, maxMarksBytes, form.Columns{Must: []string{"landmark", "x_px", "y_px"}, May: []string{"frame"}, Short: true, Comments: true, Dividers: ";\t"})
	if err != nil {
		return nil, err
	}
	var frames []Frame
	for {
		row, err := t.Next()
		switch {
		case err == io.EOF && len(frames) == 0:
			return nil, fmt.Errorf("%s: holds no marks; write a line for each under landmark,x_px,y_px", file)
		case err == io.EOF:
			return frames, nil
		case err != nil:
			return nil, err
		}
		pin := Pin{Landmark: row.Text("landmark")}
		if pin.Landmark == "" {
			return nil, row.Wrong("landmark", "empty; name the place of the rink, as B:post-bench:foot")
		}
		if pin.X, err = row.Number("x_px"); err != nil {
			return nil, err
		}
		if pin.Y, err = row.Number("y_px"); err != nil {
			return nil, err
		}
		name := row.Text("frame")
		i := slices.IndexFunc(frames, func(f Frame) bool { return f.Name == name })
		if i < 0 {
			if i = len(frames); i == MostFrames {
				return nil, row.Wrong("frame", fmt.Sprintf("these are more than %d frames; give up to %d of one hole", MostFrames, MostFrames))
			}
			frames = append(frames, Frame{Name: name})
		}
		frames[i].Marks = append(frames[i].Marks, pin)
	}
}
