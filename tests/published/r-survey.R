# Makes r-survey.json: what R's survey package gives for samples from a finite population.
#   Rscript tests/published/r-survey.R > tests/published/r-survey.json
#   npx prettier --write tests/published/r-survey.json
# On Debian 12: apt-get install r-base-core r-cran-survey. The api data (Californian schools, public
# records of the state) come with the package, and its documentation prints the first results.
suppressPackageStartupMessages(library(survey))
data(api)

show <- function(x) paste0("[", paste(vapply(x, function(v) format(v, digits = 17), ""), collapse = ","), "]")
text <- function(x) paste0("[", paste0('"', x, '"', collapse = ","), "]")
first <- TRUE
put <- function(name, value) {
  cat(if (first) "{\n" else ",\n", '  "', name, '": ', value, sep = "")
  first <<- FALSE
}
mean_of <- function(m) show(c(coef(m), SE(m)))
interval <- function(m, d) show(confint(m, level = 0.95, df = degf(d)))

put("versions", text(c(R.version.string, paste("survey", packageVersion("survey")))))

# NIST's set Michelso: Michelson's 100 speeds of light, less 299,000 km/s, as R holds them.
put("michelson", show(morley$Speed))

# Simple random sample of 200 of 6,194 schools, and the elementary ones among them.
srs <- svydesign(id = ~1, fpc = ~fpc, data = apisrs)
put("srs api00", show(apisrs$api00))
put("srs api99", show(apisrs$api99))
put("srs stype", text(apisrs$stype))
put("srs mean", mean_of(svymean(~api00, srs)))
put("srs elementary mean", mean_of(svymean(~api00, subset(srs, stype == "E"))))
put("srs ratio of api00 to api99", mean_of(svyratio(~api00, ~api99, srs)))

# 15 of 757 districts with all their schools: clusters of unequal size.
clus <- svydesign(id = ~dnum, fpc = ~fpc, data = apiclus1)
put("clus api00", show(apiclus1$api00))
put("clus dnum", show(apiclus1$dnum))
put("clus stype", text(apiclus1$stype))
put("clus mean", mean_of(svymean(~api00, clus)))
put("clus elementary mean", mean_of(svymean(~api00, subset(clus, stype == "E"))))

# Made: 7 hives of 48, without skew and spread wide, so that the interval is Student's alone.
wide <- data.frame(y = c(2, 4, 6, 8, 10, 12, 14), N = 48)
d <- svydesign(id = ~1, fpc = ~N, data = wide)
put("wide mean", mean_of(svymean(~y, d)))
put("wide interval", interval(svymean(~y, d), d))

# Made: 12 hives of 96, three of them under 6 frames and left out; capped at 10.
hives <- data.frame(
  frames = c(8, 9.5, 4, 12, 7, 6, 10, 3.5, 8.5, 7.5, 5, 11),
  pallet = rep(c("a", "b", "c"), each = 4), N = 96, M = 24)
hives$y <- pmin(hives$frames, 10)
d <- svydesign(id = ~1, fpc = ~N, data = hives)
put("left out mean", mean_of(svymean(~y, subset(d, frames >= 6))))
# The same as if the 9 hives had been drawn by themselves, the share of the lot being 12 of 96.
own <- subset(hives, frames >= 6)
own$f <- 12 / 96
put("left out mean, own sample", mean_of(svymean(~y, svydesign(id = ~1, fpc = ~f, data = own))))
# The same hives as three whole pallets of 24.
d <- svydesign(id = ~pallet, fpc = ~M, data = hives)
put("pallets mean", mean_of(svymean(~y, d)))
put("pallets left out mean", mean_of(svymean(~y, subset(d, frames >= 6))))

# Made: 10 quick looks, 5 full counts.
quick <- c(8, 6, 10, 4, 7, 9, 5, 8, 11, 6)
look <- data.frame(quick = quick[1:5], full = c(7, 5.5, 10, 3, 7.5), N = 10)
d <- svydesign(id = ~1, fpc = ~N, data = look)
r <- svyratio(~full, ~quick, d)
p <- predict(r, total = mean(quick))
put("quick look", show(c(p$total, p$se)))

# The finite lot's exact limits by R's own hypergeometric distribution, for lots too large to
# enumerate: x found of n drawn out of N; the fewest and the most in the lot at 95 %.
limits <- function(x, n, N) {
  k <- x:(N - n + x)
  at_most <- phyper(x, k, N - k, n) > 0.025
  at_least <- phyper(x - 1, k, N - k, n, lower.tail = FALSE) > 0.025
  range(k[at_most & at_least])
}
put("limits", show(c(limits(0, 20, 400), limits(7, 51, 340), limits(10000, 50000, 100000),
  limits(0, 99999, 100000), limits(3, 1000, 100000), limits(100000, 500000, 1000000))))
cat("\n}\n")
