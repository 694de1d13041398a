# Cutting plans of seeded random roofs beside a general MILP solver that knows no shared cuts. For comparison only: it is
# neither linked nor shipped.
cutting_oracle 60 1 120
