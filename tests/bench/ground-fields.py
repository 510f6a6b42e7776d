"""What ground-fields.ts is timed against: 500 errors of a ring's ground by numpy and scipy, and the bags of each.

Reads JSON from standard input: places of the walk (x, y), the crest's height over the ground there, chainages, RMSE,
shares, range, section and bag. Errors are the same over each cut across, sections those of level ground: less than
what it is timed against does. Prints the milliseconds and the count that is enough on nine of ten.
"""
import json
import sys
import time

import numpy
from scipy.linalg import cholesky
from scipy.spatial.distance import cdist

FIELDS = 500
given = json.load(sys.stdin)
began = time.process_time()
places = numpy.column_stack([given["x"], given["y"]])
heights = numpy.array(given["height"])
steps = numpy.diff(numpy.array(given["chainage"]))
variance = given["rmse"] ** 2
covariance = variance * (
    given["biasShare"]
    + given["correlatedShare"] * numpy.exp(-3 * cdist(places, places) / given["range"])
)
own = 1 - given["biasShare"] - given["correlatedShare"]
covariance += variance * (own + 1e-9) * numpy.eye(len(places))
lower = cholesky(covariance, lower=True)
errors = lower @ numpy.random.default_rng(1).standard_normal((len(places), FIELDS))
height = numpy.maximum(0, heights[:, None] - errors)
base = numpy.maximum(given["baseRatio"] * height, given["crown"])
area = height * (base + given["crown"]) / 2
volume = ((area[1:] + area[:-1]) / 2 * steps[:, None]).sum(axis=0)
bags = volume / given["bag"] * (1 + given["spareShare"])
print(json.dumps({"ms": 1000 * (time.process_time() - began), "nine": float(numpy.quantile(bags, 0.9))}))
