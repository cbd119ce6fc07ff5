# SPDX-License-Identifier: GPL-3.0-or-later
# Makes wash-life-data.csv, wash-life-weibull.csv and wash-life-km.csv: Rscript wash-life.R
# Ran with R 4.2.2 (Debian r-base-core 4.2.2.20221110-2) and survival 3.5-3 (Debian r-cran-survival 3.5-3-1).
library(survival)
set.seed(20250314)

# Made-up specimens: lives drawn from a Weibull distribution, read at the cycles of a plan.
draw <- function(n, shape, scale, plan) {
  life <- rweibull(n, shape, scale)
  read <- lapply(seq_len(n), function(i) plan[seq_len(max(1, sample(length(plan), 1)))])
  good <- mapply(function(t, r) max(0, r[r < t]), life, read)
  bad <- mapply(function(t, r) if (any(r >= t)) min(r[r >= t]) else NA, life, read)
  data.frame(last_good_cycles = good, first_bad_cycles = bad)
}
# What the aml data of the survival package say when each exact time is a failure seen at that week.
known <- function(group) {
  d <- if (is.null(group)) aml else aml[aml$x == group, ]
  data.frame(last_good_cycles = ifelse(d$status == 1, d$time - 1, d$time), first_bad_cycles = ifelse(d$status == 1, d$time, NA))
}
sets <- list(
  plan_a = draw(12, 2, 30, c(1, 5, 10, 15, 20, 25, 30, 40, 50)),
  plan_b = draw(40, 1.2, 60, seq(5, 50, 5)),
  plan_c = draw(200, 3.5, 22, c(5, 10, 15, 20, 25)),
  plan_d = draw(30, 0.7, 40, c(1, 2, 5, 10, 25, 50, 100)),
  once = data.frame(last_good_cycles = c(5, 0, 10, 0, 20, 0, 5, 0), first_bad_cycles = c(NA, 5, NA, 10, NA, 20, NA, 25)),
  aml_maintained = known("Maintained"), aml_nonmaintained = known("Nonmaintained"), aml_all = known(NULL))

number <- function(v) ifelse(is.na(v), "", sprintf("%.15g", v))
made_by <- "R 4.2.2, survival 3.5-3 (Debian r-cran-survival 3.5-3-1), by wash-life.R.\n"

out <- file("wash-life-data.csv", "w")
cat("# Specimens read at the cycles of a plan: made up, and the published aml data of survival with weeks as cycles;", made_by, file = out)
cat("set,last_good_cycles,first_bad_cycles\n", file = out)
for (name in names(sets))
  cat(paste(name, number(sets[[name]]$last_good), number(sets[[name]]$first_bad), sep = ",", collapse = "\n"), "\n", sep = "", file = out)
close(out)

out <- file("wash-life-weibull.csv", "w")
cat("# survreg (Surv (last_good, first_bad, type = \"interval2\") ~ 1, dist = \"weibull\"), 0 as left-censored:", made_by, file = out)
cat("set,shape,scale,median_cycles,at_cycles,survival_at,log_likelihood\n", file = out)
for (name in names(sets)) {
  d <- sets[[name]]
  fit <- survreg(Surv(ifelse(d$last_good == 0, NA, d$last_good), d$first_bad, type = "interval2") ~ 1, dist = "weibull",
                 subset = !(d$last_good == 0 & is.na(d$first_bad)), control = survreg.control(rel.tolerance = 1e-14, maxiter = 1000))
  shape <- 1 / fit$scale; scale <- unname(exp(coef(fit)))
  cat(paste(name, number(shape), number(scale), number(qweibull(0.5, shape, scale)), 25, number(pweibull(25, shape, scale, lower.tail = FALSE)),
            number(fit$loglik[1]), sep = ","), "\n", sep = "", file = out)
}
close(out)

out <- file("wash-life-km.csv", "w")
cat("# survfit (Surv (time, status) ~ 1, conf.type = \"log-log\"), failures at first_bad, others at last_good; times with failures:", made_by, file = out)
cat("set,cycles,at_risk,events,survival,low,high\n", file = out)
for (name in names(sets)) {
  d <- sets[[name]]; failed <- !is.na(d$first_bad)
  fit <- summary(survfit(Surv(ifelse(failed, d$first_bad, d$last_good), failed) ~ 1, conf.type = "log-log"))
  cat(paste(name, number(fit$time), fit$n.risk, fit$n.event, number(fit$surv), number(fit$lower), number(fit$upper), sep = ",", collapse = "\n"),
      "\n", sep = "", file = out)
}
close(out)
