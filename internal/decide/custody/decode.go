package custody

import (
	"encoding/json"
	"fmt"
	"strings"
)

// kinds lists how a fact of each kind is read.
func kinds() []reader {
	return []reader{
		of[Issued](), of[Moved](), of[Retired](), of[Began](), of[Seated](), of[Stocked](), of[Replaced](),
		of[Incident](), of[Withdrawn](), of[LinkMade](), of[LinkRevoked](), of[Inspected](), of[Put](), of[Answered](),
	}
}

// reader reads a fact of one kind.
type reader struct {
	kind string
	read func(body string) (Fact, error)
}

func of[T Fact]() reader {
	var f T
	return reader{f.kind(), func(body string) (Fact, error) {
		var f T
		d := json.NewDecoder(strings.NewReader(body))
		d.DisallowUnknownFields()
		err := d.Decode(&f)
		return f, err
	}}
}

// Decode reads a fact that [Encode] wrote, or that a device sent: fields that the
// kind does not have are refused.
func Decode(kind, body string) (Fact, error) {
	for _, k := range kinds() {
		if k.kind != kind {
			continue
		}
		f, err := k.read(body)
		if err != nil {
			return nil, fmt.Errorf("event of kind %q cannot be read: %w", kind, err)
		}
		return f, nil
	}
	return nil, fmt.Errorf("event of kind %.40q, which this program does not know", kind)
}
