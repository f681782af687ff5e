package main

import (
	"io"
	"os"
	"sync"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// patience is how long a job may take before its progress is shown.
const patience = time.Second

// progress shows what is being done, on a terminal, once it takes longer than
// patience. Its methods may be called from several goroutines.
type progress struct {
	mu   sync.Mutex
	bar  *progressbar.ProgressBar
	step string
	stop chan struct{}
}

// newProgress returns a progress that stays silent if quiet or if errs is no terminal.
func newProgress(errs io.Writer, quiet bool) *progress {
	p := &progress{stop: make(chan struct{})}
	if f, ok := errs.(*os.File); !quiet && ok && term.IsTerminal(int(f.Fd())) {
		go p.wait(errs)
	}
	return p
}

func (p *progress) wait(w io.Writer) {
	select {
	case <-p.stop:
		return
	case <-time.After(patience):
	}
	p.mu.Lock()
	p.bar = progressbar.NewOptions(-1, progressbar.OptionSetWriter(w), progressbar.OptionSetDescription(p.step),
		progressbar.OptionClearOnFinish(), progressbar.OptionSetElapsedTime(false), progressbar.OptionSpinnerType(14))
	p.mu.Unlock()
	tick := time.NewTicker(100 * time.Millisecond)
	defer tick.Stop()
	for {
		select {
		case <-p.stop:
			return
		case <-tick.C:
			p.mu.Lock()
			p.bar.Add(1)
			p.mu.Unlock()
		}
	}
}

// say tells what is being done now.
func (p *progress) say(step string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.step = step
	if p.bar != nil {
		p.bar.Describe(step)
	}
}

// end clears the line.
func (p *progress) end() {
	close(p.stop)
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.bar != nil {
		p.bar.Finish()
	}
}
