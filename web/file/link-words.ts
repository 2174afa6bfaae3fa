/**
 * Words that links are made of, for the packing to point at. With one character changed, no older link could be
 * read; new words go in front, since the packing counts back from the end.
 */
export const LINK_WORDS = new TextEncoder().encode(
  '"machine.thermal.windingCapacity":"caseCapacity":"windingToCase":"windingToCaseFan":"caseToAirFan":0.' +
    '"referenceSpeed":5000,"fanExponent":0.8,"machine.thermal.ambient":"hotSpotMargin":10,"magnetCoefficient":-0.2' +
    '"machine.thermal.insulation":"F","machine.thermal":null,"machine.brushes":null,"machine.brushes.commutatorDiameter":' +
    '"bars":"arcWidth":"area":"coilInductance":"coilTurns":"peakFlux":"densityLimit":"springForce":"friction":' +
    '"machine.brushes.usableLength":"machine.brushes.wear":"wearSpeed":"wearCurrent":"wearByCurrent":0.' +
    '"machine.protection":{"kind":"overload","side":"primary","current":"timeConstant":"kind":"limit","kind":"fuse"' +
    '"machine.protection.current":"machine.rotor.breakaway":1."machine.outputs.jamTorque":' +
    '"machine.rectifier.bleedResistance":10,"machine.rectifier.capacitance":2200,"kind":"half-wave","waves":1,' +
    '"machine.supply.voltage":240,"machine.supply.frequency":60,"bench.winding":90,"bench.magnet":60,"v":3,' +
    '"machine.gearing.thinned":"wheel","machine.gearing.depthRule":"normal","mixed","machine.gearing.profile":"ZK"' +
    '"machine.outputs.hubDiameter":"machine.outputs.tuftThickness":"machine.gearing.discDiameter":' +
    '"machine.gearing.addendum":0.9,"machine.gearing.clearance":0.2,"machine.gearing.boreDiameter":' +
    '"machine.gearing.centres":{"kind":"distance","centreDistance":3{"kind":"shift","profileShift":0.' +
    '"machine.gearing.centres.profileShift":"machine.gearing.centres.centreDistance":' +
    '"machine.outputs.sweepDiameter":"machine.outputs.keyAngle":"machine.outputs.toothOffset":' +
    '"machine.gearing.backlash":0.0,"machine.gearing.wheelForm":"helical","v":2,"base":"boot-cleaner","of":' +
    '"format":"counterturn-machine","version":1,"name":"about":"machine.name":"machine.about":"' +
    'machine.transformer":{"primaryVoltage":"coreResistance":"magnetisingReactance":' +
    '"machine.supply.voltage":"machine.supply":{"kind":"mains","frequency":50,"resistance":0},' +
    '"kind":"battery","voltage":"kind":"crank","machine.rectifier":{"diodeDrop":0.8},"machine.rectifier":null,' +
    '"machine.control.kind":"taps","machine.control":{"kind":"chopper","frequency":"switchDrop":"freewheelDrop":' +
    '"kind":"phase","steps":[{"angle":90},{"duty":{"speed":60}]},"machine.control.steps.4.resistance":' +
    '"machine.control.steps":[{"voltage":12,"resistance":0.4,"inductance":0.1},{"voltage":24,"resistance":1.1' +
    '"machine.control.steps.0.voltage":"machine.control.steps.1.inductance":"machine.control.steps.2.' +
    '"machine.motor":{"kind":"universal","resistance":"fieldInductance":"saturationCurrent":' +
    '"kind":"permanent-magnet","resistance":1,"inductance":2,"emfConstant":0.04,"brushDrop":1},' +
    '"machine.motor.resistance":"machine.motor.inductance":"machine.motor.emfConstant":"machine.motor.brushDrop":' +
    '"machine.rotor.inertia":0.3,"machine.rotor.frictionTorque":0.00,"machine.rotor.viscousTorque":0.00000' +
    '"machine.rotor.fanTorque":e-8,"machine.rotor.fanBlades":7,"machine.gearing.profile":"ZN","ZI"' +
    '"machine.gearing.hand":"left","machine.gearing.wormStarts":2,"machine.gearing.wheelTeeth":30,' +
    '"machine.gearing.axialModule":2,"machine.gearing.diameterQuotient":10,"machine.gearing.pressureAngle":20,' +
    '"machine.gearing.friction":0.0,"machine.gearing.wheelWidth":12,"machine.outputs.wheelInertia":1.' +
    '"machine.outputs.bearingTorque":0.01,"machine.outputs.tufts":6,"machine.outputs.loads.0.passive":0.' +
    '"machine.outputs.loads.1.linear":0.003,"machine.outputs.loads.0.active":"machine.outputs.loads.1.quadratic":' +
    '"machine.outputs.loads":[{"name":"Free","active":0,"passive":0.03,"linear":0.003,"quadratic":0},{"name":' +
    '"way":"measure","way":"design","way":"predict","bench.jammed":"right","bench.jammed":"left",' +
    '"bench.setting":3,"bench.pluggedIn":false,"bench.sense":-1,"bench.leftLoad":1,"bench.rightLoad":1,' +
    '"bench.pace":100,"picture.caseState":"closed","picture.caseState":"off","picture.motorCut":false,' +
    '"picture.apart":1,"picture.view":"brushes","picture.view":"motor","worm","whole","top",' +
    '"picture.camera":{"position":[-1,"target":[0,"field":32},"picture.withoutLosses":true,"picture.large":true,' +
    '"moment.turns":1,"moment.ticks":1,"moment.rest":0.' +
    '{"v":1,"base":"classroom-model","cord-winder","vent-opener","of":{"v":1,"base":"boot-cleaner","of":,"set":{}}',
)
