// Package geom holds plane and space vectors and the exact clipping of convex
// outlines on which the lens fit rests. Everything is plain float64 in SI.
package geom

import "math"

// Vec2 is a point or vector in a plane.
type Vec2 struct{ X, Y float64 }

// Add returns v + w.
func (v Vec2) Add(w Vec2) Vec2 { return Vec2{v.X + w.X, v.Y + w.Y} }

// Sub returns v - w.
func (v Vec2) Sub(w Vec2) Vec2 { return Vec2{v.X - w.X, v.Y - w.Y} }

// Scale returns k v.
func (v Vec2) Scale(k float64) Vec2 { return Vec2{k * v.X, k * v.Y} }

// Dot returns the scalar product v . w.
func (v Vec2) Dot(w Vec2) float64 { return v.X*w.X + v.Y*w.Y }

// Cross returns the z part of v x w: positive when w lies counter-clockwise of v.
func (v Vec2) Cross(w Vec2) float64 { return v.X*w.Y - v.Y*w.X }

// Len returns the length of v.
func (v Vec2) Len() float64 { return math.Hypot(v.X, v.Y) }

// Unit returns v scaled to length 1, or the zero vector for the zero vector.
func (v Vec2) Unit() Vec2 {
	l := v.Len()
	if l == 0 {
		return Vec2{}
	}
	return v.Scale(1 / l)
}

// Vec3 is a point or vector in space.
type Vec3 struct{ X, Y, Z float64 }

// Add returns v + w.
func (v Vec3) Add(w Vec3) Vec3 { return Vec3{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub returns v - w.
func (v Vec3) Sub(w Vec3) Vec3 { return Vec3{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Scale returns k v.
func (v Vec3) Scale(k float64) Vec3 { return Vec3{k * v.X, k * v.Y, k * v.Z} }

// Dot returns the scalar product v . w.
func (v Vec3) Dot(w Vec3) float64 { return v.X*w.X + v.Y*w.Y + v.Z*w.Z }

// Len returns the length of v.
func (v Vec3) Len() float64 { return math.Sqrt(v.Dot(v)) }

// Unit returns v scaled to length 1, or the zero vector for the zero vector.
func (v Vec3) Unit() Vec3 {
	l := v.Len()
	if l == 0 {
		return Vec3{}
	}
	return v.Scale(1 / l)
}

// XY returns the vector's first two parts.
func (v Vec3) XY() Vec2 { return Vec2{v.X, v.Y} }
