/** The recipe that `halfshade new` writes. A test checks that it has no errors and that its expectations hold. */
export const starter = `halfshade 1
recipe "One lamp through a doorway"

# A line that starts with # is a comment. Every number of a size carries its unit.
# \`halfshade words light\` lists what a light may say, \`halfshade words\` all blocks.

# Measure the room: width x depth x height. The mark on the floor, where the
# subject stands, is where every tape starts.
room {
  size: 4.6 x 6.2 x 3 m
  mark: from(left: 2.1 m, back: 1.8 m)
  walls { reflectance: 70 % }
  ceiling { reflectance: 80 % }
  floor { reflectance: 25 % }
}

# What stands behind the subject. A piece stands at the middle of its bottom edge.
set {
  flat back {
    size: 2.4 x 2.5 m
    secured: weighed_down
    at: offset(behind: 1.1 m)
    front: white_board
  }
}

subject {
  height: 1.68 m
}

# Hold a flash meter at the face, dome off, towards the lamp at full power: that
# one reading says what the lamp can give. left(...) is left as the camera sees it.
light key {
  role: key
  kind: flash
  shape: rectangle(60 x 90 cm)
  full_power: 400 Ws
  calibration: metered(f/11, at: 2 m, ISO 100)
  distance: 2 m
  bearing: left(35 deg)
  height: 2.1 m
  power: 1/4
}

camera {
  held: upright
  distance: 3.2 m  # along the floor, from the mark
  height: 1.4 m
  focal_length: 85 mm
  aperture: f/5.6
  shutter: 1/125 s
  sensitivity: ISO 100
}

# What should be true. Change the lamp and see what still holds.
expect key.angular_size is 23 deg within 2 deg
expect stops_from_aperture(face.disc(towards: key)) is 0 stop within 1/3 stop
`;
