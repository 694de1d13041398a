//! The little vector arithmetic that looking at solids needs.

/// A point or direction in space.
pub type V3 = [f64; 3];

/// Scalar product.
pub fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Vector product.
pub fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// Difference.
pub fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

/// The point this part of the way from `a` to `b`.
pub fn between(a: V3, b: V3, part: f64) -> V3 {
    [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part, a[2] + (b[2] - a[2]) * part]
}

/// The direction of a vector; `None` for one without a direction.
pub fn unit(a: V3) -> Option<V3> {
    let length = dot(a, a).sqrt();
    (length.is_finite() && length > f64::MIN_POSITIVE).then(|| a.map(|v| v / length))
}
