# SPDX-License-Identifier: GPL-3.0-or-later
# Makes pass-rate-r.csv: Rscript pass-rate.R >pass-rate-r.csv
# Ran with R 4.2.2 (Debian r-base-core 4.2.2.20221110-2).
cases <- expand.grid(passed = NA, tested = c(1, 3, 8, 22, 59, 230, 1000, 10000, 99999), confidence = c(0.5, 0.8, 0.9, 0.95, 0.999))
cases <- do.call(rbind, lapply(seq_len(nrow(cases)), function(i) {
  n <- cases$tested[i]
  data.frame(passed = unique(c(0, 1, n %/% 2, n - 1, n)), tested = n, confidence = cases$confidence[i])
}))
cat("# Exact binomial bounds: binom.test (passed, tested, conf.level = confidence)$conf.int, and the lower end of\n")
cat("# alternative = \"greater\" for the one-sided bound; R 4.2.2 (Debian r-base-core 4.2.2.20221110-2), by pass-rate.R.\n")
cat("passed,tested,confidence,lower,upper,one_sided_lower\n")
for (i in seq_len(nrow(cases))) {
  k <- cases$passed[i]; n <- cases$tested[i]; c <- cases$confidence[i]
  both <- binom.test(k, n, conf.level = c)$conf.int
  one <- binom.test(k, n, conf.level = c, alternative = "greater")$conf.int[1]
  cat(sprintf("%d,%d,%g,%.15g,%.15g,%.15g\n", k, n, c, both[1], both[2], one))
}
