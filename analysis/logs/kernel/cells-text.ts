/**
 * The two loops that touch every cell of a log, as WebAssembly text. Eight letters stand in one 64-bit word, and the
 * figures in it are turned into a number together: JavaScript has no such words, and takes more than twice as long.
 * They decide nothing: whatever is not a plain number is left to the exact way, with the place where it stands.
 */

/** Where things lie in the memory of the loops, bytes. */
export const PLACE = {
  /** row and column at which `cells` stopped */
  stopped: 0,
  /** what `extent` found: four lanes each of the lowest, the highest, the largest step and the count of missing */
  lowest: 16,
  highest: 32,
  step: 48,
  missing: 64,
  /** powers of ten, 64-bit */
  powers: 96,
  /** sixteen bytes a column: what it holds, bytes of the cell above, the byte that ends a cell, decimals kept */
  columns: 256,
  /** first byte of each row of the block */
  starts: 73_728,
  /** the block: the rows of one column together, then the next column */
  block: 98_304,
  /** bytes of the file */
  bytes: 393_216,
  /** one column of the block in 16-bit numbers */
  narrow: 671_744,
} as const;

/** Memory pages of 64 kB that hold all of it. */
export const PAGES = 11;
/** Powers of ten in the table. */
export const POWERS = 17;
/** No reading, among whole numbers of 32 bits; a narrower one has its own lowest number for it. */
export const MISSING = -(2 ** 31);
/** Decimals that can stand in one word with their mark. */
export const MOST_PLACES = 7;

const ZEROS = '0x3030303030303030';
const EACH = '0x0101010101010101';
const HIGHEST = '0x8080808080808080';

/** Eight figures in a word, first one lowest, to their number; anything but figures leads out. */
const figures = (word: string) => `
  (local.set ${word} (i64.xor (local.get ${word}) (i64.const ${ZEROS})))
  (br_if $out (i64.ne (i64.const 0) (i64.and
    (i64.or (local.get ${word}) (i64.add (local.get ${word}) (i64.const 0x0606060606060606)))
    (i64.const 0xf0f0f0f0f0f0f0f0))))
  ;; neighbours to pairs, pairs to fours, fours to eight
  (local.set ${word} (i64.add (i64.mul (local.get ${word}) (i64.const 10)) (i64.shr_u (local.get ${word}) (i64.const 8))))
  (local.set ${word} (i64.shr_u (i64.add
    (i64.mul (i64.and (local.get ${word}) (i64.const 0x000000ff000000ff)) (i64.const 0x000f424000000064))
    (i64.mul (i64.and (i64.shr_u (local.get ${word}) (i64.const 16)) (i64.const 0x000000ff000000ff)) (i64.const 0x0000271000000001)))
    (i64.const 32)))`;

/** From the start of a cell to its end, which must be the one that is due. */
const lookForEnd = `
  (local.set $end (local.get $at))
  (block $found (loop $look
    (local.set $byte (i32.load8_u (local.get $end)))
    (br_if $found (i32.eq (local.get $byte) (local.get $separator)))
    (br_if $found (i32.eq (local.get $byte) (i32.const 10)))
    (br_if $found (i32.eq (local.get $byte) (i32.const 13)))
    (local.set $end (i32.add (local.get $end) (i32.const 1)))
    (br $look)))
  (br_if $out (i32.ne (local.get $byte) (i32.load offset=8 (local.get $column))))`;

/** The largest whole number kept in 32 bits. */
const fits = '(br_if $out (i64.gt_u (local.get $sum) (i64.const 2147483647)))';
const power = (of: string) => `(i64.load offset=${PLACE.powers} (i32.shl ${of} (i32.const 3)))`;

export const CELLS_TEXT = `
(func $cells
  (param $at i32) (param $to i32)          ;; bytes to read; a row ends before $to
  (param $row i32) (param $rows i32)       ;; row of the block to fill next, and rows it holds
  (param $c i32) (param $width i32)        ;; column that comes next, and columns of the file
  (param $stride i32)                      ;; bytes from a column of the block to the next
  (param $separator i32) (param $pair i32) ;; byte between cells; 1 where a return is followed by a newline
  (param $marks i64)                       ;; the decimal mark, eight times
  (result i32)                             ;; the byte it stopped at: the start of a cell
  (local $column i32) (local $into i32) (local $from i32) (local $end i32) (local $length i32) (local $byte i32)
  (local $value i32) (local $places i32) (local $behind i32)
  (local $word i64) (local $lead i64) (local $minus i64) (local $shift i64) (local $keep i64) (local $sum i64)
  (local $scale i64)
  (local.set $column (i32.add (i32.const ${PLACE.columns}) (i32.shl (local.get $c) (i32.const 4))))
  (local.set $into (i32.add (i32.const ${PLACE.block + 16})
    (i32.add (i32.mul (local.get $c) (local.get $stride)) (i32.shl (local.get $row) (i32.const 2)))))
  (block $out (loop $next
    (br_if $out (i32.ge_u (local.get $at) (local.get $to)))
    (if (i32.load (local.get $column))
      (then
        ;; a cell that is read later: only its place is kept
        ${lookForEnd}
        (local.set $value (local.get $at)))
      (else
        ;; a cell is as long as the one above it until its end proves otherwise
        (local.set $end (i32.add (local.get $at) (i32.load offset=4 (local.get $column))))
        (if (i32.ne (i32.load8_u (local.get $end)) (i32.load offset=8 (local.get $column))) (then
          ${lookForEnd}
          (i32.store offset=4 (local.get $column) (i32.sub (local.get $end) (local.get $at)))))
        (local.set $from (local.get $at))
        (loop $blanks (if (i32.eq (i32.load8_u (local.get $from)) (i32.const 32)) (then
          (local.set $from (i32.add (local.get $from) (i32.const 1)))
          (br $blanks))))
        (local.set $length (i32.sub (local.get $end) (local.get $from)))
        (local.set $value (i32.const ${MISSING}))
        (if (local.get $length) (then
          ;; the sign becomes a zero; what lacks to eight letters is filled up with zeros in front
          (local.set $word (i64.load (local.get $from)))
          (local.set $minus (i64.extend_i32_u (i64.eq (i64.and (local.get $word) (i64.const 0xff)) (i64.const 0x2d))))
          (br_if $out (i32.eq (local.get $length) (i32.wrap_i64 (local.get $minus))))
          (local.set $shift (i64.extend_i32_u (i32.sub (i32.const 64) (i32.shl (local.get $length) (i32.const 3)))))
          (if (i32.gt_u (local.get $length) (i32.const 8)) (then
            (br_if $out (i32.gt_u (local.get $length) (i32.const 16)))
            (local.set $shift (i64.add (local.get $shift) (i64.const 64)))))
          (local.set $keep (i64.shl (i64.const -1) (local.get $shift)))
          (local.set $word (i64.or
            (i64.shl (i64.xor (local.get $word) (i64.mul (local.get $minus) (i64.const 0x1d))) (local.get $shift))
            (i64.and (i64.const ${ZEROS}) (i64.xor (local.get $keep) (i64.const -1)))))
          (if (i32.gt_u (local.get $length) (i32.const 8)) (then
            (local.set $lead (local.get $word))
            (local.set $word (i64.load (i32.sub (local.get $end) (i32.const 8))))))
          ;; the decimal mark is taken out: it stands where it did above, or there are fewer decimals
          (local.set $places (i32.load offset=12 (local.get $column)))
          (local.set $behind (local.get $places))
          (local.set $scale (i64.const 1))
          (if (local.get $places) (then
            (if (i64.ne
                (i64.and (i64.const 0xff) (i64.xor (local.get $marks)
                  (i64.shr_u (local.get $word) (i64.extend_i32_u (i32.sub (i32.const 56) (i32.shl (local.get $places) (i32.const 3)))))))
                (i64.const 0))
              (then
                (local.set $keep (i64.xor (local.get $word) (local.get $marks)))
                (local.set $keep (i64.and
                  (i64.and (i64.sub (local.get $keep) (i64.const ${EACH})) (i64.xor (local.get $keep) (i64.const -1)))
                  (i64.const ${HIGHEST})))
                (local.set $behind (i32.const 0))
                (if (i32.eqz (i64.eqz (local.get $keep))) (then
                  (local.set $behind (i32.sub (i32.const 7)
                    (i32.wrap_i64 (i64.shr_u (i64.ctz (local.get $keep)) (i64.const 3)))))
                  (br_if $out (i32.eqz (local.get $behind)))))
                (br_if $out (i32.gt_u (local.get $behind) (local.get $places)))
                (local.set $scale ${power('(i32.sub (local.get $places) (local.get $behind))')})))
            (if (local.get $behind) (then
              (local.set $keep (i64.shl (i64.const -1)
                (i64.extend_i32_u (i32.sub (i32.const 64) (i32.shl (local.get $behind) (i32.const 3))))))
              (local.set $word (i64.or (i64.const 0x30) (i64.or
                (i64.and (local.get $word) (local.get $keep))
                (i64.and (i64.shl (local.get $word) (i64.const 8)) (i64.xor (local.get $keep) (i64.const -1))))))))))
          ${figures('$word')}
          (local.set $sum (local.get $word))
          (if (i32.gt_u (local.get $length) (i32.const 8)) (then
            ${figures('$lead')}
            (local.set $sum (i64.add (local.get $sum) (i64.mul (local.get $lead)
              ${power('(i32.add (i32.const 7) (i32.eqz (local.get $behind)))')})))
            ${fits}))
          (local.set $sum (i64.mul (local.get $sum) (local.get $scale)))
          ${fits}
          (local.set $value (i32.wrap_i64 (i64.add (local.get $minus)
            (i64.xor (local.get $sum) (i64.sub (i64.const 0) (local.get $minus))))))))))
    (local.set $c (i32.add (local.get $c) (i32.const 1)))
    (if (i32.eq (local.get $c) (local.get $width))
      (then
        (if (i32.eq (i32.load8_u (local.get $end)) (i32.const 13)) (then
          (if (i32.ne (i32.eq (i32.load8_u offset=1 (local.get $end)) (i32.const 10)) (local.get $pair)) (then
            (local.set $c (i32.sub (local.get $c) (i32.const 1)))
            (br $out)))
          (local.set $end (i32.add (local.get $end) (local.get $pair)))))
        (i32.store (local.get $into) (local.get $value))
        (local.set $at (i32.add (local.get $end) (i32.const 1)))
        (local.set $row (i32.add (local.get $row) (i32.const 1)))
        (local.set $c (i32.const 0))
        (local.set $column (i32.const ${PLACE.columns}))
        (local.set $into (i32.add (i32.const ${PLACE.block + 16}) (i32.shl (local.get $row) (i32.const 2))))
        (i32.store offset=${PLACE.starts} (i32.shl (local.get $row) (i32.const 2)) (local.get $at))
        (br_if $out (i32.ge_u (local.get $row) (local.get $rows))))
      (else
        (i32.store (local.get $into) (local.get $value))
        (local.set $at (i32.add (local.get $end) (i32.const 1)))
        (local.set $column (i32.add (local.get $column) (i32.const 16)))
        (local.set $into (i32.add (local.get $into) (local.get $stride)))))
    (br $next)))
  (i32.store (i32.const ${PLACE.stopped}) (local.get $row))
  (i32.store (i32.const ${PLACE.stopped + 4}) (local.get $c))
  (local.get $at))

(func $extent
  (param $from i32)  ;; the number before the first one of a column
  (param $count i32) ;; numbers, a multiple of eight
  (local $into i32) (local $one v128) (local $two v128) (local $gap v128) (local $gaps v128) (local $none v128)
  (local $low v128) (local $high v128) (local $step v128) (local $most v128)
  (local.set $into (i32.const ${PLACE.narrow}))
  (local.set $gap (i32x4.splat (i32.const ${MISSING})))
  (local.set $most (i32x4.splat (i32.const 2147483647)))
  (local.set $low (local.get $most))
  (local.set $high (local.get $gap))
  (loop $next
    (local.set $one (v128.load offset=4 (local.get $from)))
    (local.set $two (v128.load offset=20 (local.get $from)))
    (v128.store (local.get $into) (i16x8.narrow_i32x4_s (local.get $one) (local.get $two)))
    (local.set $step (i32x4.max_s (local.get $step) (i32x4.max_s
      (i32x4.abs (i32x4.sub (local.get $one) (v128.load (local.get $from))))
      (i32x4.abs (i32x4.sub (local.get $two) (v128.load offset=16 (local.get $from)))))))
    (local.set $high (i32x4.max_s (local.get $high) (i32x4.max_s (local.get $one) (local.get $two))))
    (local.set $none (i32x4.eq (local.get $one) (local.get $gap)))
    (local.set $gaps (i32x4.sub (local.get $gaps) (local.get $none)))
    (local.set $low (i32x4.min_s (local.get $low) (v128.bitselect (local.get $most) (local.get $one) (local.get $none))))
    (local.set $none (i32x4.eq (local.get $two) (local.get $gap)))
    (local.set $gaps (i32x4.sub (local.get $gaps) (local.get $none)))
    (local.set $low (i32x4.min_s (local.get $low) (v128.bitselect (local.get $most) (local.get $two) (local.get $none))))
    (local.set $from (i32.add (local.get $from) (i32.const 32)))
    (local.set $into (i32.add (local.get $into) (i32.const 16)))
    (local.set $count (i32.sub (local.get $count) (i32.const 8)))
    (br_if $next (local.get $count)))
  (v128.store (i32.const ${PLACE.lowest}) (local.get $low))
  (v128.store (i32.const ${PLACE.highest}) (local.get $high))
  (v128.store (i32.const ${PLACE.step}) (local.get $step))
  (v128.store (i32.const ${PLACE.missing}) (local.get $gaps)))

(func $zeros
  (param $from i32) (param $to i32) ;; bytes; none of the 64 behind them is zero
  (result i32)                      ;; 1 where a byte of zero is among them
  (local $none v128)
  (block $out (loop $next
    (br_if $out (i32.ge_u (local.get $from) (local.get $to)))
    (br_if $out (v128.any_true (v128.or
      (v128.or (i8x16.eq (local.get $none) (v128.load (local.get $from)))
        (i8x16.eq (local.get $none) (v128.load offset=16 (local.get $from))))
      (v128.or (i8x16.eq (local.get $none) (v128.load offset=32 (local.get $from)))
        (i8x16.eq (local.get $none) (v128.load offset=48 (local.get $from)))))))
    (local.set $from (i32.add (local.get $from) (i32.const 64)))
    (br $next)))
  (i32.lt_u (local.get $from) (local.get $to)))
`;
