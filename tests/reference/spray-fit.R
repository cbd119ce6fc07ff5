# SPDX-License-Identifier: GPL-3.0-or-later
#
# Writes spray-fit.csv, the expected values of the calculator spray-fit, with R's lm() and predict():
#
#     Rscript spray-fit.R >spray-fit.csv
#
# The interval of the setting is found without Fieller's formula: it ends where the confidence band of the mean
# (predict, interval = "confidence") meets the target, searched by uniroot(). Where the slope is not significant
# at the confidence, the interval is left empty. The points are invented.

sprays <- function (n, lowest, highest, intercept, slope, sd) {
  setting <- round (seq (lowest, highest, length.out = n), 2)
  list (setting = setting, laydown = round (intercept + slope * setting + rnorm (n, 0, sd), 2))
}

meets <- function (fit, target, confidence, side, from, to) {
  gap <- function (x) {
    band <- predict (fit, data.frame (setting = x), interval = "confidence", level = confidence)
    band[, side] - target
  }
  uniroot (gap, c (from, to), tol = 1e-13, extendInt = "yes", maxiter = 10000)$root
}

interval <- function (fit, target, confidence, setting) {
  slope <- coef (summary (fit))["setting", ]
  if (slope["Pr(>|t|)"] >= 1 - confidence)
    return (c (NA, NA))
  estimate <- (target - coef (fit)[[1]]) / slope[["Estimate"]]
  span <- diff (range (setting))
  ends <- c (meets (fit, target, confidence, "upr", estimate - span, estimate + span),
             meets (fit, target, confidence, "lwr", estimate - span, estimate + span))
  sort (ends)
}

digits <- function (x) ifelse (is.na (x), "", sprintf ("%.17g", x))

line <- function (name, points, target, confidence) {
  fit <- lm (laydown ~ setting, data = points)
  coefficients <- coef (summary (fit))
  estimate <- (target - coefficients[1, 1]) / coefficients[2, 1]
  values <- c (coefficients[2, 1], coefficients[1, 1], coefficients[2, 2], coefficients[1, 2],
               summary (fit)$sigma, summary (fit)$r.squared, estimate,
               interval (fit, target, confidence, points$setting))
  cat (name, paste (points$setting, collapse = " "), paste (points$laydown, collapse = " "), target, confidence,
       digits (values), sep = ",")
  cat ("\n")
}

set.seed (7870)
cat ("# Source: computed by spray-fit.R with", R.version.string, "- lm(), predict() and uniroot(); invented points\n")
cat ("name,settings,laydowns,target,confidence,slope,intercept,slope_se,intercept_se,residual_sd,r_squared,setting,",
     "setting_low,setting_high\n", sep = "")
line ("three points", list (setting = c (20, 40, 60), laydown = c (61, 118, 182)), 120, 0.95)
line ("few points", sprays (5, 20, 60, 2, 3, 4), 120, 0.95)
line ("many points", sprays (40, 10, 90, -5, 2.5, 8), 150, 0.95)
line ("repeats", list (setting = c (30, 30, 30, 50, 50, 50), laydown = c (88, 93, 91, 149, 155, 151)), 120, 0.95)
line ("falling", sprays (8, 100, 400, 260, -0.5, 5), 120, 0.95)
line ("extrapolated", sprays (10, 20, 60, 2, 3, 4), 240, 0.95)
line ("below zero", sprays (10, -10, 10, 100, 4, 6), 80, 0.95)
line ("low confidence", sprays (8, 20, 60, 2, 3, 6), 120, 0.5)
line ("high confidence", sprays (8, 20, 60, 2, 3, 6), 120, 0.999)
line ("barely significant", list (setting = c (1, 2, 3, 4, 5), laydown = c (100, 116, 112, 132, 131)), 120, 0.95)
line ("not significant", list (setting = c (1, 2, 3, 4, 5), laydown = c (100, 130, 108, 140, 110)), 120, 0.95)
line ("large settings", sprays (12, 100000, 900000, 20, 0.0002, 2), 120, 0.9)
