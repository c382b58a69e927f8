using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace MenuLab.Data.Conversions;

/// <summary>An id as 16 bytes, the most significant first, so that SQLite orders ids as they were made.</summary>
internal sealed class IdAsBytes<TId>() : ValueConverter<TId, byte[]>(ToBytes(), FromBytes())
    where TId : struct
{
    private static Expression<Func<TId, byte[]>> ToBytes()
    {
        var id = Expression.Parameter(typeof(TId), "id");
        return Expression.Lambda<Func<TId, byte[]>>(
            Expression.Call(Expression.Property(id, "Value"), nameof(Guid.ToByteArray), null, Expression.Constant(true)), id);
    }

    private static Expression<Func<byte[], TId>> FromBytes()
    {
        var bytes = Expression.Parameter(typeof(byte[]), "bytes");
        var guid = Expression.Call(typeof(GuidBytes), nameof(GuidBytes.ToGuid), null, bytes);
        return Expression.Lambda<Func<byte[], TId>>(Expression.New(typeof(TId).GetConstructor([typeof(Guid)])!, guid), bytes);
    }
}

/// <summary>An id as PostgreSQL's uuid.</summary>
internal sealed class IdAsGuid<TId>() : ValueConverter<TId, Guid>(ToGuid(), FromGuid())
    where TId : struct
{
    private static Expression<Func<TId, Guid>> ToGuid()
    {
        var id = Expression.Parameter(typeof(TId), "id");
        return Expression.Lambda<Func<TId, Guid>>(Expression.Property(id, "Value"), id);
    }

    private static Expression<Func<Guid, TId>> FromGuid()
    {
        var guid = Expression.Parameter(typeof(Guid), "guid");
        return Expression.Lambda<Func<Guid, TId>>(Expression.New(typeof(TId).GetConstructor([typeof(Guid)])!, guid), guid);
    }
}

/// <summary>A Guid that is no id of ours, stored like one.</summary>
internal sealed class GuidBytes() : ValueConverter<Guid, byte[]>(g => g.ToByteArray(true), b => ToGuid(b))
{
    public static Guid ToGuid(byte[] bytes) => new(bytes, bigEndian: true);
}
