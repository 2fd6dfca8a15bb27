//! Plugs and sockets: what fits where, what has power, whether recorder and computer can talk, and which input the sensor
//! reaches.

use super::{Refusal, table::Part};
use serde::{Deserialize, Serialize};

/// One end of a cable: a plug.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// Power cord, the end for the recorder.
    PowerRecorder,
    /// Power cord, the end for the wall or the power strip.
    PowerWall,
    /// Data cable, the end for the recorder.
    DataRecorder,
    /// Data cable, the end for the computer.
    DataComputer,
    /// The finger sensor's plug.
    Sensor,
}

/// All plugs, in the order in which [`Wiring`] keeps them.
pub const ENDS: [End; 5] =
    [End::PowerRecorder, End::PowerWall, End::DataRecorder, End::DataComputer, End::Sensor];

/// A socket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Socket {
    /// Power inlet on the recorder's far side.
    RecorderInlet,
    /// Data socket on the recorder's far side.
    RecorderData,
    /// Input 1 at the recorder's short side that looks to the hand.
    In1,
    /// Input 2.
    In2,
    /// Input 3.
    In3,
    /// Calibrator output on the recorder's near side: a two-pin post, into which no plug of the bench goes.
    Calibrator,
    /// Data port of the computer.
    Port1,
    /// Second data port of the computer.
    Port2,
    /// A port of the computer that gives power and no data.
    PortCharge,
    /// First outlet of the power strip.
    Outlet1,
    /// Second outlet.
    Outlet2,
    /// Third outlet.
    Outlet3,
    /// Fourth outlet.
    Outlet4,
    /// A wall outlet, always live.
    Wall,
}

/// All sockets.
pub const SOCKETS: [Socket; 14] = [
    Socket::RecorderInlet,
    Socket::RecorderData,
    Socket::In1,
    Socket::In2,
    Socket::In3,
    Socket::Calibrator,
    Socket::Port1,
    Socket::Port2,
    Socket::PortCharge,
    Socket::Outlet1,
    Socket::Outlet2,
    Socket::Outlet3,
    Socket::Outlet4,
    Socket::Wall,
];

/// The shape of a socket or a plug.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// Appliance inlet.
    Inlet,
    /// Power line outlet.
    Outlet,
    /// Square data socket of the unit.
    Data,
    /// Flat port of the computer.
    Port,
    /// Round signal socket.
    Signal,
    /// Two-pin post of the calibrator.
    Post,
}

impl Socket {
    /// The socket's shape.
    pub fn shape(self) -> Shape {
        match self {
            Socket::RecorderInlet => Shape::Inlet,
            Socket::RecorderData => Shape::Data,
            Socket::In1 | Socket::In2 | Socket::In3 => Shape::Signal,
            Socket::Calibrator => Shape::Post,
            Socket::Port1 | Socket::Port2 | Socket::PortCharge => Shape::Port,
            Socket::Outlet1 | Socket::Outlet2 | Socket::Outlet3 | Socket::Outlet4 | Socket::Wall => {
                Shape::Outlet
            }
        }
    }

    /// The input's number, 1 to 3, where the socket is an input.
    pub fn input(self) -> Option<u8> {
        match self {
            Socket::In1 => Some(1),
            Socket::In2 => Some(2),
            Socket::In3 => Some(3),
            _ => None,
        }
    }

    /// The part it belongs to with its offset from the part's centre, or no part and its place on the table, cm.
    pub fn place(self) -> (Option<Part>, f64, f64) {
        match self {
            Socket::RecorderInlet => (Some(Part::Recorder), -8.0, -10.0),
            Socket::RecorderData => (Some(Part::Recorder), 4.5, -10.0),
            Socket::In1 => (Some(Part::Recorder), 17.0, -6.0),
            Socket::In2 => (Some(Part::Recorder), 17.0, 0.0),
            Socket::In3 => (Some(Part::Recorder), 17.0, 6.0),
            Socket::Calibrator => (Some(Part::Recorder), -11.5, 10.0),
            Socket::Port1 => (Some(Part::Computer), -18.0, -7.0),
            Socket::Port2 => (Some(Part::Computer), -18.0, 0.0),
            Socket::PortCharge => (Some(Part::Computer), -18.0, 7.0),
            Socket::Outlet1 => (Some(Part::PowerStrip), -14.0, 0.0),
            Socket::Outlet2 => (Some(Part::PowerStrip), -5.0, 0.0),
            Socket::Outlet3 => (Some(Part::PowerStrip), 4.0, 0.0),
            Socket::Outlet4 => (Some(Part::PowerStrip), 13.0, 0.0),
            Socket::Wall => (None, 96.0, 2.0),
        }
    }
}

impl End {
    /// The shape of socket that the plug goes into.
    pub fn shape(self) -> Shape {
        match self {
            End::PowerRecorder => Shape::Inlet,
            End::PowerWall => Shape::Outlet,
            End::DataRecorder => Shape::Data,
            End::DataComputer => Shape::Port,
            End::Sensor => Shape::Signal,
        }
    }

    /// Name of the cable that the plug is on.
    pub fn cable(self) -> &'static str {
        match self {
            End::PowerRecorder | End::PowerWall => "power",
            End::DataRecorder | End::DataComputer => "data",
            End::Sensor => "sensor",
        }
    }
}

/// A switch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Switch {
    /// The recorder's.
    Recorder,
    /// The power strip's.
    PowerStrip,
    /// The desk lamp's.
    Lamp,
}

/// Plugs in their sockets and switches in their positions.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wiring {
    plugs: [Option<Socket>; 5],
    /// The unit's switch.
    pub recorder_on: bool,
    /// The power strip's switch; the strip itself is always in the wall.
    pub power_strip_on: bool,
    /// The charger is in the power strip.
    pub charger_plugged: bool,
    /// The desk lamp burns; it has a socket of its own in the wall.
    pub lamp_on: bool,
}

impl Wiring {
    /// All cables lying on the table, the recorder off, the power strip on.
    pub fn apart() -> Self {
        Self {
            plugs: [None; 5],
            recorder_on: false,
            power_strip_on: true,
            charger_plugged: false,
            lamp_on: false,
        }
    }

    /// Unit powered from the power strip, linked to the first port, sensor in input 1.
    pub fn complete() -> Self {
        Self {
            plugs: [
                Some(Socket::RecorderInlet),
                Some(Socket::Outlet2),
                Some(Socket::RecorderData),
                Some(Socket::Port1),
                Some(Socket::In1),
            ],
            recorder_on: true,
            power_strip_on: true,
            charger_plugged: false,
            lamp_on: false,
        }
    }

    /// The socket that a plug is in.
    pub fn socket_of(&self, end: End) -> Option<Socket> {
        ENDS.iter().position(|e| *e == end).and_then(|i| self.plugs[i])
    }

    /// The plug that is in a socket. The charger keeps the power strip's last outlet while it is plugged in.
    pub fn end_in(&self, socket: Socket) -> Option<End> {
        self.plugs.iter().position(|s| *s == Some(socket)).map(|i| ENDS[i])
    }

    /// Pushes a plug home, out of any socket that it was in.
    pub fn plug(&mut self, end: End, socket: Socket) -> Result<(), Refusal> {
        if end.shape() != socket.shape() {
            return Err(Refusal::DoesNotFit { end, socket });
        }
        let charger_there = socket == Socket::Outlet4 && self.charger_plugged;
        if charger_there || self.end_in(socket).is_some_and(|other| other != end) {
            return Err(Refusal::SocketTaken { socket });
        }
        self.set(end, Some(socket));
        Ok(())
    }

    /// Pulls a plug out.
    pub fn unplug(&mut self, end: End) {
        self.set(end, None);
    }

    fn set(&mut self, end: End, socket: Option<Socket>) {
        if let Some(i) = ENDS.iter().position(|e| *e == end) {
            self.plugs[i] = socket;
        }
    }

    /// Turns a switch.
    pub fn switch(&mut self, id: Switch, on: bool) {
        match id {
            Switch::Recorder => self.recorder_on = on,
            Switch::PowerStrip => self.power_strip_on = on,
            Switch::Lamp => self.lamp_on = on,
        }
    }

    /// Whether the unit has power: a power cord in, its other end live, the switch on.
    pub fn recorder_powered(&self) -> bool {
        let live = match self.socket_of(End::PowerWall) {
            Some(Socket::Wall) => true,
            Some(_) => self.power_strip_on,
            None => false,
        };
        live && self.socket_of(End::PowerRecorder) == Some(Socket::RecorderInlet) && self.recorder_on
    }

    /// Whether a data path exists between unit and computer; the charging port carries none.
    pub fn data_path(&self) -> bool {
        self.socket_of(End::DataRecorder) == Some(Socket::RecorderData)
            && matches!(self.socket_of(End::DataComputer), Some(Socket::Port1 | Socket::Port2))
    }

    /// The input that the sensor's plug is in, 1 to 3.
    pub fn sensor_input(&self) -> Option<u8> {
        self.socket_of(End::Sensor).and_then(Socket::input)
    }
}
