"""Force laws by their definitions, and the energy they store by quadrature."""

from scipy.integrate import quad


def spring(x, rate, free, preload=0.0):
    """Linear: preload at the free length, in N and m or N m and rad."""
    return preload + rate * (x - free)


def gas(x, force, extended, column):
    """A push by Boyle's law: force at full length, column the length of gas
    that then stands behind the rod."""
    return -force * column / (column - (extended - x))


def band(x, free, area, shear):
    """Neo-Hookean rubber drawn to the length x."""
    stretch = x / free
    return area * shear * (stretch - stretch**-2)


LAWS = {"spring": (spring, "free"), "gas": (gas, "extended"), "band": (band, "free")}


def energy(law, x):
    """Energy in J stored between the law's own length and x."""
    pull, origin = LAWS[law["kind"]]
    numbers = law["numbers"]
    return quad(lambda at: pull(at, **numbers), numbers[origin], x, epsabs=1e-13, epsrel=1e-13)[0]
