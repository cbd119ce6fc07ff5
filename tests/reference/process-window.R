# SPDX-License-Identifier: GPL-3.0-or-later
# Makes process-window-runs.csv, -fits.csv, -bounds.csv and -cheapest.csv: Rscript process-window.R
# Ran with R 4.2.2 (Debian r-base-core 4.2.2.20221110-2).
made_by <- "R 4.2.2 (Debian r-base-core 4.2.2.20221110-2), by process-window.R.\n"
number <- function(v) ifelse(is.na(v), "", sprintf("%.15g", v))

# Made-up runs; grades in half steps, hand in the shop's own rating.
d <- function(x1, x2, grade, hand = NA) data.frame(x1 = x1, x2 = x2, grade = grade, hand = hand)
runs <- list(
  line = d(c(100, 150, 200, 250, 300, 100, 200, 300, 250), NA, c(2.5, 3, 3.5, 4, 5, 2, 4, 4.5, 4.5)),
  curve = d(c(20, 30, 40, 50, 60, 20, 35, 45, 60, 70), NA, c(2.5, 3.5, 4.5, 4.5, 4, 2, 4, 4.5, 4, 2.5)),
  plane = d(c(150, 180, 150, 180, 165, 165, 150, 180), c(30, 30, 90, 90, 60, 60, 60, 60), c(2, 3.5, 3, 5, 3.5, 3, 2.5, 4)),
  dome = d(c(20, 60, 20, 60, 40, 40, 40, 20, 60, 40, 40), c(100, 100, 300, 300, 200, 200, 200, 200, 200, 100, 300),
           c(2.5, 3, 3.5, 4, 4.5, 4.5, 4, 3.5, 4, 3, 4), c(4, 3.5, 2, 1.5, 3, 3.5, 3, 3, 2.5, NA, 2)),
  # Settings that are never quite what was planned, far from 0.
  worn = d(c(1000.2, 1001.1, 1002.3, 1000.7, 1001.6, 1002.9, 1000.1, 1002.2), c(5.13, 5.02, 5.31, 5.27, 5.18, 5.09, 5.22, 5.05),
           c(3, 3.5, 4.5, 3.5, 4, 4.5, 3, 4)))
models <- list(line = "linear", curve = "quadratic", plane = "linear", dome = "quadratic", worn = "linear")
terms <- list(
  line = c("1", "x1"), curve = c("1", "x1", "I(x1^2)"), plane = c("1", "x1", "x2"), worn = c("1", "x1", "x2"),
  dome = c("1", "x1", "x2", "I(x1^2)", "I(x2^2)", "x1:x2"))
formula_of <- function(set, response) as.formula(paste(response, "~", paste(terms[[set]], collapse = " + ")))

out <- file("process-window-runs.csv", "w")
cat("# Made-up runs of one or two settings. Invented, and no measurement of anything; written by process-window.R.\n", file = out)
cat("set,x1,x2,grade,hand\n", file = out)
for (set in names(runs))
  cat(with(runs[[set]], paste(set, number(x1), number(x2), number(grade), number(hand), sep = ",")), sep = "\n", file = out)
close(out)

out <- file("process-window-fits.csv", "w")
cat("# lm (grade ~ …): coefficients in the order intercept, x1, x2, x1^2, x2^2, x1*x2;", made_by, file = out)
cat("set,term,value,se,residual_sd,r_squared,degrees_of_freedom\n", file = out)
for (set in names(runs)) {
  s <- summary(lm(formula_of(set, "grade"), runs[[set]])); k <- coef(s)
  order <- match(sub("^1$", "(Intercept)", terms[[set]]), rownames(k))
  cat(paste(set, seq_along(order) - 1, number(k[order, 1]), number(k[order, 2]), number(s$sigma), number(s$r.squared), s$df[2], sep = ","),
      sep = "\n", file = out)
}
close(out)

lower <- function(fit, x1, x2, confidence) {
  p <- predict(fit, data.frame(x1 = x1, x2 = x2), se.fit = TRUE)
  unname(p$fit - qt(confidence, fit$df.residual) * p$se.fit)
}
out <- file("process-window-bounds.csv", "w")
cat("# predict (lm, interval = \"confidence\", level = 2 * confidence - 1): fit and lwr, which is one-sided at that confidence;", made_by, file = out)
cat("set,confidence,x1,x2,predicted,lower\n", file = out)
for (set in names(runs)) for (confidence in c(0.6, 0.9, 0.95, 0.99)) {
  fit <- lm(formula_of(set, "grade"), runs[[set]]); r1 <- range(runs[[set]]$x1); r2 <- range(runs[[set]]$x2)
  new <- expand.grid(x1 = seq(r1[1], r1[2], length.out = 5), x2 = if (is.na(r2[1])) NA else seq(r2[1], r2[2], length.out = 5))
  p <- predict(fit, new, interval = "confidence", level = 2 * confidence - 1)
  stopifnot(max(abs(p[, "lwr"] - lower(fit, new$x1, new$x2, confidence))) < 1e-12)
  cat(paste(set, confidence, number(new$x1), number(new$x2), number(p[, "fit"]), number(p[, "lwr"]), sep = ","), sep = "\n", file = out)
}
close(out)

# The cheapest setting that meets everything, by uniroot along the last factor and ever finer grids over the first.
first_root <- function(margin, low, high) {
  if (margin(low) >= 0) return(low)
  top <- optimize(margin, c(low, high), maximum = TRUE, tol = 1e-12)$maximum
  if (margin(high) > margin(top)) top <- high
  if (margin(top) < 0) return(NA)
  uniroot(margin, c(low, top), tol = 1e-14, maxiter = 10000)$root
}
cheapest <- function(set, cost, low, high, required, required_hand, confidence) {
  grade <- lm(formula_of(set, "grade"), runs[[set]])
  hand <- if (is.na(required_hand)) NULL else lm(formula_of(set, "hand"), runs[[set]])
  margin <- function(x1, x2) {
    m <- lower(grade, x1, x2, confidence) - required
    if (is.null(hand)) m else pmin(m, lower(hand, x1, x2, confidence) - required_hand)
  }
  if (length(low) == 1) {
    x <- first_root(function(v) margin(v, NA), low, high)
    return(c(x, NA, cost * x))
  }
  total <- function(x1) { x2 <- first_root(function(v) margin(x1, v), low[2], high[2]); if (is.na(x2)) 1e6 else cost[1] * x1 + cost[2] * x2 }
  from <- low[1]; to <- high[1]
  for (zoom in 1:12) {
    at <- seq(from, to, length.out = 41); totals <- sapply(at, total); i <- which.min(totals)
    if (totals[i] == 1e6) return(c(NA, NA, NA))
    from <- at[max(i - 1, 1)]; to <- at[min(i + 1, 41)]
  }
  c(at[i], first_root(function(v) margin(at[i], v), low[2], high[2]), totals[i])
}
cases <- list(
  list("line", 0.002, 100, 300, 4, NA, 0.9), list("line", 0.002, 100, 300, 3.5, NA, 0.99), list("line", 0.002, 100, 300, 5, NA, 0.99),
  list("curve", 0.01, 20, 70, 4, NA, 0.9), list("curve", 0.01, 20, 70, 4, NA, 0.99), list("curve", 0.01, 20, 70, 4.5, NA, 0.99),
  list("plane", c(0.01, 0.02), c(150, 30), c(180, 90), 4, NA, 0.9), list("plane", c(0.04, 0.01), c(150, 30), c(180, 90), 3.5, NA, 0.95),
  list("dome", c(0.01, 0.002), c(20, 100), c(60, 300), 4, NA, 0.9), list("dome", c(0.01, 0.002), c(20, 100), c(60, 300), 3, NA, 0.95),
  list("dome", c(-0.01, 0.002), c(20, 100), c(60, 300), 3.5, 2.8, 0.9), list("dome", c(0.01, 0.002), c(20, 100), c(60, 300), 4, 3.2, 0.9),
  list("worn", c(1, 2), c(1000, 5), c(1003, 5.4), 4, NA, 0.9))
out <- file("process-window-cheapest.csv", "w")
cat("# The cheapest setting between low and high whose lower bounds meet what is required, by uniroot and ever finer grids; empty where none does;", made_by, file = out)
cat("set,cost_1,cost_2,low_1,low_2,high_1,high_2,required_grade,required_hand,confidence,x1,x2,cost\n", file = out)
for (c in cases) {
  two <- function(v) paste(number(v[1]), number(if (length(v) == 2) v[2] else NA), sep = ",")
  best <- do.call(cheapest, c)
  cat(paste(c[[1]], two(c[[2]]), two(c[[3]]), two(c[[4]]), number(c[[5]]), number(c[[6]]), number(c[[7]]), number(best[1]), number(best[2]), number(best[3]),
            sep = ","), "\n", sep = "", file = out)
}
close(out)
