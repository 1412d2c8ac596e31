// Nothing of its own: what the tests share of precompiled headers hangs on it.
