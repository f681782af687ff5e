# Packs the Munsell renotation into munsell.txt. Takes a table of tab-separated
# columns H V C x y Y under a heading line (the real colours of the renotation,
# sorted by hue, value and chroma, chroma rising by 2 from 2); writes one line
# for each value and hue. Run in the package folder:
#   awk -f testdata/munsell.awk TABLE | sort -n -k1,1 -k2,2 | cat testdata/munsell.head - > munsell.txt
BEGIN { FS = "\t"; n = split("R YR Y GY G BG B PB P RP", letters, " "); for (i = 1; i <= n; i++) family[letters[i]] = i - 1 }
NR > 1 {
    step = $1 + 0; letter = $1; sub(/^[0-9.]+/, "", letter)
    key = ($2 + 0) " " (10 * step + 100 * family[letter]) % 1000
    if ($3 != 2 * ++count[key]) { print "chroma out of order: " $0 > "/dev/stderr"; exit 1 }
    row[key] = row[key] " " sprintf("%.0f %.0f", 1e4 * $4, 1e4 * $5)
}
END { for (key in row) print key row[key] }
