# A list of commands; .ci/run is what must pass.
.PHONY: build test check golden fuzz bench report scene

build:
	go build -o tonewright ./cmd/tonewright

test:
	go test ./...

check:
	bash .ci/run

golden:
	go test ./report -update

fuzz:
	go test ./analyze/colour -run '^$$' -fuzz FuzzParse -fuzztime 1m
	go test ./grid -run '^$$' -fuzz FuzzSpans -fuzztime 1m
	go test ./grid -run '^$$' -fuzz FuzzLay -fuzztime 1m
	go test ./grid -run '^$$' -fuzz FuzzCrossings -fuzztime 1m
	go test ./analyze -run '^$$' -fuzz FuzzOpen -fuzztime 1m
	go test ./analyze -run '^$$' -fuzz FuzzInside -fuzztime 1m
	go test ./analyze -run '^$$' -fuzz FuzzReadMask -fuzztime 1m
	go test ./match/layer -run '^$$' -fuzz FuzzParseMedium -fuzztime 1m
	go test ./match/paint -run '^$$' -fuzz FuzzParseBox -fuzztime 1m
	go test ./report/answer -run '^$$' -fuzz FuzzParseRounds -fuzztime 1m
	go test ./match/paint -run '^$$' -fuzz FuzzWithTube -fuzztime 1m
	go test ./report/painting -run '^$$' -fuzz FuzzRead -fuzztime 1m
	go test ./match/tube -run '^$$' -fuzz FuzzRead -fuzztime 1m

bench:
	go test ./... -run '^$$' -bench . -count 5

report:
	go run ./cmd/tonewright plan testdata/kettle.jpg

scene:
	go run ./testdata/scene -out testdata -width 1600
