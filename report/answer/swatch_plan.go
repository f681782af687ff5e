package answer

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"

	"tonewright/report/plan"
)

// planColour is what is read of a colour in a plan's JSON.
type planColour struct {
	ID     string     `json:"id"`
	AimLab []*float64 `json:"aim_lab"` // to tell what is missing from 0
	Recipe *struct {
		Parts []plan.Part `json:"parts"`
	} `json:"recipe"`
}

// planRead is what is read of a plan's JSON.
type planRead struct {
	Tool   string   `json:"tool"`
	Box    plan.Box `json:"box"`
	Paints []struct {
		ID    string `json:"paint"`
		Basis string `json:"basis"`
	} `json:"paints"`
	Regions []struct {
		Colours []planColour `json:"colours"`
	} `json:"regions"`
}

// largestPlan is the most of a plan's JSON that is read, in bytes; one of a large photo
// is a few MiB at most.
const largestPlan = 64 << 20

// readPlan reads a plan's JSON; what it is wanted for ends the error of a file that is
// not there.
func readPlan(file, wanted string) (read planRead, err error) {
	text, err := readPlain(file)
	switch {
	case err != nil:
		return read, fmt.Errorf("%s: cannot be read: %v; %s is looked up in the plan's data: make it with tonewright plan PHOTO --json plan.json, or say with --plan where it is", file, causeOf(err), wanted)
	case len(text) > largestPlan:
		return read, fmt.Errorf("%s: is over %d MiB, larger than any plan; say with --plan where the plan's data is", file, largestPlan>>20)
	}
	if err := json.Unmarshal(text, &read); err != nil || read.Tool != "tonewright" || read.Regions == nil {
		return read, fmt.Errorf("%s: is not the data of a plan; make it with tonewright plan PHOTO --json plan.json", file)
	}
	return read, nil
}

// readPlain reads a plain file up to one byte past largestPlan. Anything else, such as
// a pipe, may never end.
func readPlain(file string) ([]byte, error) {
	info, err := os.Stat(file)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("it is no plain file")
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, largestPlan+1))
}
