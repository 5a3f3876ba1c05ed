;; Products of a matrix of 8-bit numbers with a vector of 16-bit numbers, exact in 32 bits.
;; The caller sees to it that no sum leaves 32 bits: |weight| <= 127, |input| <= 4095, at most 4096 columns.
(module
  (memory (export "memory") 1)
  (func (export "dense")
    (param $weights i32) (param $inputs i32) (param $outputs i32) (param $rows i32) (param $columns i32)
    (local $column i32) (local $row i32) (local $w i32)
    (local $x0 v128) (local $x1 v128) (local $bytes v128)
    (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (local $ab v128) (local $cd v128)
    ;; Four rows at a time: each input is fetched once for four of them.
    (loop $fourRows
      (local.set $a (v128.const i32x4 0 0 0 0))
      (local.set $b (v128.const i32x4 0 0 0 0))
      (local.set $c (v128.const i32x4 0 0 0 0))
      (local.set $d (v128.const i32x4 0 0 0 0))
      (local.set $column (i32.const 0))
      (loop $sixteenColumns
        (local.set $x0 (v128.load (i32.add (local.get $inputs) (i32.shl (local.get $column) (i32.const 1)))))
        (local.set $x1 (v128.load offset=16 (i32.add (local.get $inputs) (i32.shl (local.get $column) (i32.const 1)))))
        (local.set $w (i32.add (local.get $weights) (local.get $column)))
        (local.set $bytes (v128.load (local.get $w)))
        (local.set $a (i32x4.add (local.get $a) (i32x4.add
          (i32x4.dot_i16x8_s (i16x8.extend_low_i8x16_s (local.get $bytes)) (local.get $x0))
          (i32x4.dot_i16x8_s (i16x8.extend_high_i8x16_s (local.get $bytes)) (local.get $x1)))))
        (local.set $w (i32.add (local.get $w) (local.get $columns)))
        (local.set $bytes (v128.load (local.get $w)))
        (local.set $b (i32x4.add (local.get $b) (i32x4.add
          (i32x4.dot_i16x8_s (i16x8.extend_low_i8x16_s (local.get $bytes)) (local.get $x0))
          (i32x4.dot_i16x8_s (i16x8.extend_high_i8x16_s (local.get $bytes)) (local.get $x1)))))
        (local.set $w (i32.add (local.get $w) (local.get $columns)))
        (local.set $bytes (v128.load (local.get $w)))
        (local.set $c (i32x4.add (local.get $c) (i32x4.add
          (i32x4.dot_i16x8_s (i16x8.extend_low_i8x16_s (local.get $bytes)) (local.get $x0))
          (i32x4.dot_i16x8_s (i16x8.extend_high_i8x16_s (local.get $bytes)) (local.get $x1)))))
        (local.set $w (i32.add (local.get $w) (local.get $columns)))
        (local.set $bytes (v128.load (local.get $w)))
        (local.set $d (i32x4.add (local.get $d) (i32x4.add
          (i32x4.dot_i16x8_s (i16x8.extend_low_i8x16_s (local.get $bytes)) (local.get $x0))
          (i32x4.dot_i16x8_s (i16x8.extend_high_i8x16_s (local.get $bytes)) (local.get $x1)))))
        (br_if $sixteenColumns (i32.lt_u
          (local.tee $column (i32.add (local.get $column) (i32.const 16))) (local.get $columns))))
      ;; The four sums of each become one number each.
      (local.set $ab (i32x4.add
        (i8x16.shuffle 0 1 2 3 16 17 18 19 4 5 6 7 20 21 22 23 (local.get $a) (local.get $b))
        (i8x16.shuffle 8 9 10 11 24 25 26 27 12 13 14 15 28 29 30 31 (local.get $a) (local.get $b))))
      (local.set $cd (i32x4.add
        (i8x16.shuffle 0 1 2 3 16 17 18 19 4 5 6 7 20 21 22 23 (local.get $c) (local.get $d))
        (i8x16.shuffle 8 9 10 11 24 25 26 27 12 13 14 15 28 29 30 31 (local.get $c) (local.get $d))))
      (v128.store (local.get $outputs) (i32x4.add
        (i8x16.shuffle 0 1 2 3 4 5 6 7 16 17 18 19 20 21 22 23 (local.get $ab) (local.get $cd))
        (i8x16.shuffle 8 9 10 11 12 13 14 15 24 25 26 27 28 29 30 31 (local.get $ab) (local.get $cd))))
      (local.set $outputs (i32.add (local.get $outputs) (i32.const 16)))
      (local.set $weights (i32.add (local.get $weights) (i32.shl (local.get $columns) (i32.const 2))))
      (br_if $fourRows (i32.lt_u
        (local.tee $row (i32.add (local.get $row) (i32.const 4))) (local.get $rows))))))
