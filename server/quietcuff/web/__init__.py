"""The only room that speaks HTTP: routes, who may use them, errors as problems, headers, the shell.

Routes translate and call; no rule, no record and no bundle is worked out here.
"""
