"""The mean of two networks' weights, one of which began with the other's: blend.py SHARE BEFORE AFTER OUTPUT (SHARE of AFTER, 0 to 1)"""

import sys

import torch

if __name__ == "__main__":
    share, (before, after) = float(sys.argv[1]), (torch.load(path, map_location="cpu") for path in sys.argv[2:4])
    torch.save({k: ((1 - share) * v.float() + share * after[k].float()).half() for k, v in before.items()}, sys.argv[4])
