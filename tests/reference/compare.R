# SPDX-License-Identifier: GPL-3.0-or-later
# Makes compare-r.csv: Rscript compare.R >compare-r.csv
# Ran with R 4.2.2 (Debian r-base-core 4.2.2.20221110-2).
cases <- rbind(
  c(3, 3, 0, 3), c(3, 3, 3, 3), c(0, 5, 0, 7), c(1, 1, 0, 1), c(10, 12, 1, 10), c(7, 10, 3, 10), c(3, 10, 7, 10),
  c(3, 4, 1, 4), c(19, 20, 14, 20), c(1, 9, 11, 14), c(50, 100, 62, 100), c(5, 50, 15, 60), c(120, 400, 90, 380),
  c(5000, 10000, 5150, 10000), c(7, 20, 12, 13), c(2, 2000, 9, 2500))
set.seed(1); n1 <- sample(1:60, 40, TRUE); n2 <- sample(1:60, 40, TRUE)
cases <- rbind(cases, cbind(floor(runif(40) * (n1 + 1)), n1, floor(runif(40) * (n2 + 1)), n2))
cat("# Fisher's exact test, two-sided: fisher.test (matrix (c (passed_1, tested_1 - passed_1, passed_2, tested_2 - passed_2), 2))$p.value;\n")
cat("# R 4.2.2 (Debian r-base-core 4.2.2.20221110-2), by compare.R.\n")
cat("passed_1,tested_1,passed_2,tested_2,p_value\n")
for (i in seq_len(nrow(cases))) {
  v <- cases[i, ]
  p <- fisher.test(matrix(c(v[1], v[2] - v[1], v[3], v[4] - v[3]), 2))$p.value
  cat(sprintf("%d,%d,%d,%d,%.15g\n", v[1], v[2], v[3], v[4], p))
}
