//! Points and directions in space, as the solution writes them.

pub(super) type V3 = [f64; 3];

pub(super) fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// Twice the area of a flat loop, as a vector square to it.
pub(super) fn twice_area(points: &[V3]) -> V3 {
    let Some((&first, rest)) = points.split_first() else { return [0.0; 3] };
    let mut sum = [0.0; 3];
    for pair in rest.windows(2) {
        let part = cross(sub(pair[0], first), sub(pair[1], first));
        for k in 0..3 {
            sum[k] += part[k];
        }
    }
    sum
}
