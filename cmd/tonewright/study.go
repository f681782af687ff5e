// The colour study as files of their own: --study FILE.png.

package main

import (
	"bytes"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"tonewright/report"
	"tonewright/report/plan"
)

// studyFlag says where the colour study goes; "" for nowhere.
type studyFlag struct{ study string }

func (f *studyFlag) set(s *pflag.FlagSet) {
	s.StringVar(&f.study, "study", "", "also write the colour study, the painting before it is painted, to `FILE.png`, and beside it FILE-gray.png, over a ground that is not white FILE-coat.png, and for a sight that is not full FILE-sight.png")
}

// name returns the file for one of report.Studies.
func (f *studyFlag) name(which string) string {
	if which == "study" {
		return f.study
	}
	end := filepath.Ext(f.study)
	return strings.TrimSuffix(f.study, end) + "-" + which + end
}

// names lists every file that the study may be written to: which of them it is shows
// when the plan is made, and by then it is late to say that one of them is in the way.
func (f *studyFlag) names() []string {
	if f.study == "" {
		return nil
	}
	return []string{f.study, f.name("gray"), f.name("coat"), f.name("sight")}
}

// written lists the files of the study that the plan has, as they were named.
func (f *studyFlag) written(p *plan.Plan) string {
	if f.study == "" {
		return ""
	}
	var names []string
	for _, which := range report.Studies(p) {
		names = append(names, f.name(which))
	}
	return strings.Join(names, ", ")
}

// check makes sure that the study goes into PNG files, and that none of them is read
// for the plan or written for something else.
func (f *studyFlag) check(written []string, read ...string) error {
	if f.study != "" && !strings.EqualFold(filepath.Ext(f.study), ".png") {
		return usageError("--study %s: the study is written as PNG: give it a name that ends in .png", f.study)
	}
	for _, name := range f.names() {
		target, err := targetOf(name)
		if err != nil {
			return err
		}
		for _, input := range read {
			if input != "" && sameFile(target, input) {
				return usageError("%s is read and would be written over by the study: choose another file for --study", name)
			}
		}
		for _, other := range written {
			if sameFile(target, other) || absolute(target) == absolute(other) {
				return usageError("--study would write over %s, which is another result: choose another file for --study", name)
			}
		}
	}
	return nil
}

// files draws the pictures of the study that the plan has.
func (f *studyFlag) files(p *plan.Plan) ([]output, error) {
	var files []output
	if f.study == "" {
		return nil, nil
	}
	for _, which := range report.Studies(p) {
		var b bytes.Buffer
		if err := report.Study(&b, p, which); err != nil {
			return nil, err
		}
		target, err := targetOf(f.name(which))
		if err != nil {
			return nil, err
		}
		files = append(files, output{target, b.Bytes()})
	}
	return files, nil
}
