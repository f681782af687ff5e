# Packs the ISCC-NBS colour-name blocks into iscc_nbs.txt. Takes two tables of
# tab-separated columns with # remarks and a heading line: the names (number,
# name, central notation) and the elementary blocks (chart, Hmin, Hmax, Vmin,
# Vmax, Cmin, Cmax, number; sorted by hue). Writes one line for each name, in
# the order of the numbers; blocks that go on unchanged into the next hue chart
# are joined. Run in the package folder:
#   awk -f testdata/iscc_nbs.awk NAMES BLOCKS | cat testdata/iscc_nbs.head - > iscc_nbs.txt
BEGIN { FS = "\t" }
{ sub(/\r$/, "") }
/^#/ || /Number/ || NF < 3 { next }
NF == 3 { name[$1] = $2; last = $1; next }
{
    sub(/Inf/, "-", $7); box = $4 " " $5 " " $6 " " $7; n = $8; i = count[n]
    for (j = 1; j <= i; j++) if (boxes[n, j] == box && to[n, j] == $2) { to[n, j] = $3; next }
    count[n] = ++i; boxes[n, i] = box; from[n, i] = $2; to[n, i] = $3
}
END {
    for (n = 1; n <= last; n++) {
        line = name[n]
        for (j = 1; j <= count[n]; j++) line = line "; " from[n, j] " " to[n, j] " " boxes[n, j]
        print line
    }
}
