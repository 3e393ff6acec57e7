using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>Every key of a house file, by group. The reader, the messages and the schema all use this list.</summary>
internal static class HouseKeys
{
    /// <summary>The file itself.</summary>
    public static readonly string[] House = ["form", "house", "units", "levels", "fixtures", "radios", "required", "spots", "seats", "zones", "keep-out", "displays", "devices", "passages", "cables"];

    /// <summary>A level.</summary>
    public static readonly string[] Level =
        ["name", "height", "elevation", "outer", "inner", "rooms", "doors", "windows", "gaps", "walls", "above"];

    /// <summary>A room.</summary>
    public static readonly string[] Room = ["name", "corner", "size", "outline"];

    /// <summary>A door.</summary>
    public static readonly string[] Door =
        ["name", "between", "room", "side", "wall", "at", "width", "height", "material", "open"];

    /// <summary>A window.</summary>
    public static readonly string[] Window =
        ["name", "room", "side", "between", "wall", "at", "width", "sill", "height", "material", "open"];

    /// <summary>An opening without a leaf.</summary>
    public static readonly string[] Gap = ["name", "between", "room", "side", "wall", "at", "width", "sill", "height"];

    /// <summary>A wall along a polyline.</summary>
    public static readonly string[] Wall = ["name", "along", "material", "from", "height"];

    /// <summary>What lies between a level and the one above.</summary>
    public static readonly string[] Above = ["build-up", "joists", "voids"];

    /// <summary>Direction and spacing of joists.</summary>
    public static readonly string[] Joists = ["run", "spacing", "first"];

    /// <summary>A void written as a rectangle.</summary>
    public static readonly string[] Void = ["corner", "size"];

    /// <summary>A fixture.</summary>
    public static readonly string[] Fixture =
        ["name", "level", "box", "from", "to", "turn", "front", "material", "shell", "open", "sides"];

    /// <summary>The sides of a fixture.</summary>
    public static readonly string[] FixtureSides =
        ["front", "back", "left", "right", "top", "bottom", "north", "east", "south", "west"];

    /// <summary>The two radios.</summary>
    public static readonly string[] Radios = ["console", "controller"];

    /// <summary>A radio written out.</summary>
    public static readonly string[] Radio = ["name", "transmit", "gain", RadioTableReader.MismatchKey, "sensitivity", "hand", "spread"];

    /// <summary>A spot.</summary>
    public static readonly string[] Spot = ["name", "level", "at", "inside", "height", "radio", "lead"];

    /// <summary>The lead of a spot's radio.</summary>
    public static readonly string[] SpotLead = ["length", "to"];

    /// <summary>A seat.</summary>
    public static readonly string[] Seat = ["name", "level", "at", "hands", "facing", "required", "used", "plays", "players"];

    /// <summary>Where a console may stand.</summary>
    public static readonly string[] Zone = ["name", "level", "room", "corner", "size", "outline", "heights"];

    /// <summary>Where no console may stand.</summary>
    public static readonly string[] KeepOut = ["name", "level", "room", "corner", "size", "outline", "from", "to"];

    /// <summary>A screen or projector.</summary>
    public static readonly string[] Display = ["name", "fixture", "level", "at", "inputs", "signal", "takes", "through"];

    /// <summary>A device between console and display.</summary>
    public static readonly string[] Device = ["name", "role", "inside", "height", "level", "at", "inputs", "outputs", "passes"];

    /// <summary>Where a cable can pass without drilling.</summary>
    public static readonly string[] Passage = ["name", "levels", "from", "to", "bore", "clear", "bends", "holds"];

    /// <summary>A cable that is already installed.</summary>
    public static readonly string[] PulledCable = ["name", "from", "to", "kind", "length"];
}
