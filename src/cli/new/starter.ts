/** A batch that plans unchanged; every number is invented, to be replaced. */
export const starter = `# yaml-language-server: $schema=./batch.schema.json
# A starter batch. Every number here is made up: put in your own, then run
#   dipwright plan batch.yaml
batch: first-batch
currency: EUR
startAt: 09:00

rates:
  electricity: 0.30 /kWh
  water: 4.00 /m3
  labour: 30.00 /h
  disposal: 0.50 /L          # spent liquor taken away

tanks:
  small:
    volume: 6 L              # working volume, measured hot
    capacity: 7.5 L          # to the brim
    surface: 30 cm x 15 cm   # of the liquor
    cover: lid               # none, lid or balls
    heater: 500 W

dryers:
  rack: { capacity: 60, temperature: 70 °C, time: 60 min, power: 400 W }

bases:
  white: {}

dyes:
  moss:
    price: 40.00 /L
    dilution: 1:9            # 1 part dye + 9 parts water
    temperature: 80 °C
    rate: 0.015 /s           # how fast parts take up dye; swatches say it better
    law: first-order
    shelfLife: 60 d          # of a made-up bath

parts:
  clip:
    mass: 5 g
    area: 30 cm2             # all wetted surface
    blank: 1.20              # cost of the undyed part

shades:
  moss-light: { dye: moss, time: 30 s }
  moss-deep: { dye: moss, time: 90 s }

baths:
  - { tank: small, dye: moss, topUp: strength, after: keep, every: 7 d }

orders:
  - { part: clip, shade: moss-light, base: white, quantity: 40 }
  - { part: clip, shade: moss-deep, base: white, quantity: 25 }

handling:
  rinses: 2                  # baths of clear water, one after the other

yield: 97 %
pricing: { overhead: 10 %, fees: 4 %, margin: 40 %, tax: 20 %, ending: 0.90 }
`;
